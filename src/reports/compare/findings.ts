import type { Comparison } from '../../advice/builds/comparison.ts';
import type { Session } from '../session.ts';
import type { Groups } from './groups.ts';

/** The files of a comparison and what came of it. */
export interface Compared {
  readonly sessions: readonly Session[];
  /** Of the first file: the base. */
  readonly session: Session;
  readonly comparison: Comparison;
  readonly groups: Groups;
  /** What was written. */
  readonly files: readonly string[];
}
