import * as z from 'zod/mini';
import { nearestWord } from '../../quantities/nearest-word.ts';
import { KEY_MEANINGS, type KeyMeaning } from './key-meaning.ts';
import type { Refusal } from './refusal.ts';

/** What a leaf's reader returns: the value, or why there is none. */
export type LeafOutcome<T> =
  | {
      readonly value: T;
      /** What was taken to be meant, as it is to be typed, where something else was typed: `28.5 in` for 28 1/2". */
      readonly readAs?: string;
      readonly refusal?: undefined;
    }
  | { readonly refusal: Refusal };

/** What the issue of a refused value carries to the reader of the file. */
export interface LeafProblem extends Refusal {
  readonly missing: boolean;
}

/** A single value of the file: `read` gets its text; `expected` is what to say when there is none. */
export function leaf<T>(expected: () => Omit<Refusal, 'reason'>, read: (text: string) => LeafOutcome<T>) {
  return z.transform((found: unknown, context): T => {
    const text = textOf(found);
    const outcome: LeafOutcome<T> =
      text === undefined ? { refusal: { ...expected(), reason: whyNoText(found) } } : read(text);
    if (outcome.refusal === undefined) return outcome.value;
    const params: LeafProblem = { ...outcome.refusal, missing: found === undefined };
    context.issues.push({ code: 'custom', message: params.reason, input: found, params: { ...params } });
    return z.NEVER;
  });
}

/** YAML has already made numbers of the bare ones; sections and lists have no text. */
function textOf(found: unknown): string | undefined {
  if (typeof found === 'string') return found;
  return typeof found === 'number' || typeof found === 'boolean' ? String(found) : undefined;
}

function whyNoText(found: unknown): string {
  if (found === undefined) return 'is missing';
  if (found === null) return 'has nothing after it';
  return Array.isArray(found)
    ? 'has a list where a single value belongs'
    : 'has keys under it where a single value belongs';
}

/** The word that another case, a slip of the finger or a longer form of it stands for. */
export function wordMeant<T extends string>(text: string, words: readonly T[]): T | undefined {
  const typed = text.trim().toLowerCase().replace(/[- ]/g, '_');
  const nearest = words.find((word) => word === typed) ?? nearestWord(typed, words);
  return words.find((word) => word === nearest) ?? words.find((word) => typed.startsWith(word));
}

/** Other names of words, in small letters with blanks between: `fixed blade`, by the word. */
export type OtherNames<T extends string> = Partial<Readonly<Record<T, readonly string[]>>>;

/** The word that a text is, in any letter case and by its other names; undefined for another text. */
function wordBy<T extends string>(text: string, words: readonly T[], called: OtherNames<T>): T | undefined {
  const typed = text
    .trim()
    .toLowerCase()
    .replace(/[-_\s]+/g, ' ');
  const named = words.find((word) => called[word]?.includes(typed) === true);
  return named ?? words.find((word) => word.replaceAll('_', ' ') === typed);
}

/** One of a few words; `together` is what they are in a refusal. */
export function choice<const T extends string>(
  words: readonly T[],
  meaning: KeyMeaning,
  called: OtherNames<NoInfer<T>> = {},
  together = 'words allowed here',
) {
  const allowed = words.join(', ').replace(/, (?=[^,]*$)/, ' or ');
  return leaf<T>(
    () => ({ allowed, write: `"${words[0]}"` }),
    (text) => {
      const value = wordBy(text, words, called);
      if (value !== undefined) return { value };
      const meant = wordMeant(text, words);
      const write = meant === undefined ? words.map((word) => `"${word}"`).join(' or ') : `"${meant}"`;
      return { refusal: { reason: `"${text}" is not one of the ${together}`, allowed, write } };
    },
  ).register(KEY_MEANINGS, { ...meaning, words });
}

/** A title or a name is drawn on paper and stands in every line about its bearer; a note is kept and not shown. */
const LONGEST_NAME = 300;
export const LONGEST_NOTE = 5000;

/** Free text: a title, a name, or a note when it may be `most` characters long. */
export const freeText = (meaning: KeyMeaning, most = LONGEST_NAME) =>
  leaf<string>(
    () => ({ allowed: 'a text', write: 'a few words' }),
    (value) =>
      value.length <= most
        ? { value }
        : {
            refusal: {
              reason: `is a text of ${value.length} characters`,
              allowed: `at most ${most} characters`,
              write: 'a shorter one, and the rest behind a # on a line of its own',
            },
          },
  ).register(KEY_MEANINGS, meaning);

/** Yes or no. */
export const flag = (meaning: KeyMeaning) =>
  leaf<boolean>(
    () => ({ allowed: 'true or false', write: '"true" or "false"' }),
    (text) => {
      if (/^(true|yes)$/i.test(text)) return { value: true };
      if (/^(false|no)$/i.test(text)) return { value: false };
      const reason = `"${text}" is neither true nor false`;
      return { refusal: { reason, allowed: 'true or false', write: '"true" or "false"' } };
    },
  ).register(KEY_MEANINGS, { ...meaning, words: ['true', 'false'] });
