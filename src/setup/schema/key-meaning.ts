import * as z from 'zod/mini';
import type { Limit } from './limit.ts';

/** What a key of the setup file is for, kept beside its schema. */
export interface KeyMeaning {
  /** In the archer's words: a fragment without a full stop, for documents, forms and comments. */
  readonly what: string;
  /** What is used when the file does not have the key, where no row of defaults.ts says it. */
  readonly otherwise?: string;
  /** Of a number. */
  readonly limit?: Limit;
  /** The words that may stand there, of a key that takes one of a few. */
  readonly words?: readonly string[];
  /** The section whose keys may stand here too, of a section that repeats another. */
  readonly keysOf?: string;
}

/** Every section, list and value of the schema registers its meaning here. */
export const KEY_MEANINGS = z.registry<KeyMeaning>();
