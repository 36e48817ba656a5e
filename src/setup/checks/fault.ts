import type { KeyPath } from '../key-path.ts';

/** A problem before it is known where in the text it stands. */
export interface Fault {
  readonly path: KeyPath;
  /** Where to point: at the value, at its key, or (when it is not there) at the section it belongs in. */
  readonly at: 'value' | 'key' | 'missing';
  /** A clause that follows the path and a colon. */
  readonly reason: string;
  readonly allowed: string;
  /** An order without its full stop. */
  readonly write: string;
  /** The key that a misspelt one was likely meant to be. */
  readonly meant?: KeyPath;
  /** The whole key paths where a key belongs that stands in the wrong place. */
  readonly paths?: readonly string[];
}
