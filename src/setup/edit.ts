import type { KeyPath } from './key-path.ts';

/** A single value to put into the text of a setup file. */
export interface Edit {
  readonly path: KeyPath;
  /** As it is to be typed: `281 fps`. */
  readonly value: string | number;
}
