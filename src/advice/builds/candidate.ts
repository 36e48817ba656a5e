import type { Arrow } from '../../arrow/arrow.ts';
import type { Bow } from '../../bow/bow.ts';
import type { Calibration } from '../../calibration/fit.ts';
import type { Estimate } from '../../quantities/estimate.ts';
import type { Kilograms, MetresPerSecond } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';

/** An arrow that might be bought, in a bow that is there. */
export interface Candidate {
  readonly name: string;
  readonly arrow: Arrow;
  /** The bow's rig as measured, with this arrow in it; its launch speed counts for nothing. */
  readonly rig: Rig;
  /** Chronographed with this very arrow; null when the bow's energy is to tell. */
  readonly speed: Estimate<MetresPerSecond> | null;
  /** Relative uncertainty of a drag coefficient given for this very arrow; null when its drag follows from the base's. */
  readonly ownDragSd: number | null;
  /** Standard uncertainty of its mass: 0 for one that was weighed, or is the base's. */
  readonly massSd: Kilograms;
}

/** One bow with the arrow it is tuned for and the arrows it might shoot. */
export interface BowAndArrows extends Bow {
  /** Of the base build. */
  readonly name: string;
  readonly arrow: Arrow;
  readonly calibration: Calibration;
  readonly candidates: readonly Candidate[];
}
