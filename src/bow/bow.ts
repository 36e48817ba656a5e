import type { Metres, Newtons } from '../quantities/quantity.ts';
import type { ChronographedArrow, VirtualMassPrior } from './energy.ts';

/** A bow as it is set, and what is known of the energy it gives. */
export interface Bow {
  /** Bows of the same identity are one bow in two files: what is unknown of it is shared. */
  readonly identity: string;
  readonly powerStroke: Metres;
  /** Null when nobody has said it. */
  readonly peakDraw: Newtons | null;
  readonly virtualMass: VirtualMassPrior;
  /** Arrows chronographed with it, beside those that a question is about. */
  readonly otherShots: readonly ChronographedArrow[];
  /** Whether a launch speed comes from the maker's rating instead of a chronograph. */
  readonly rated: boolean;
}
