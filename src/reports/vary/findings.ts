import type { Session } from '../session.ts';
import type { VariedKey } from './axes.ts';
import type { Cell } from './cells.ts';
import type { Output } from './outputs.ts';

/** A sweep and what came of it, a cell for every combination, the last key running fastest. */
export interface Varied {
  readonly session: Session;
  readonly axes: readonly VariedKey[];
  readonly ranges: readonly number[];
  readonly outputs: readonly Output[];
  readonly plotted: readonly Output[];
  readonly cells: readonly Cell[];
}
