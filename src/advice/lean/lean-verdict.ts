import { NOTICED_SHARE } from '../../calibration/own-spread.ts';
import type { LateralFit } from '../../calibration/sideways/lateral-fit.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { Lean } from './lean.ts';

/**
 * `inside the groups`: even where it is largest the curved part moves the hits by less than a third of what one arrow
 * scatters. `not shown`: it would matter, but is not known to twice its standard uncertainty. `worth doing`: neither.
 */
type LeanReason = 'inside the groups' | 'not shown' | 'worth doing';

/** Whether to turn anything, and the numbers that say so. */
export interface LeanVerdict {
  readonly worthDoing: boolean;
  readonly reason: LeanReason;
  /** Largest sideways miss over the span as things are, with windage set at the zero range; right positive. */
  readonly shift: Metres;
  readonly at: Metres;
  /** Standard deviation of one arrow sideways at that range. */
  readonly arrowSd: Metres;
  /** Whether any group's left and right was given. */
  readonly measured: boolean;
  /** The turn over its standard uncertainty, without sign. */
  readonly significance: number;
  /**
   * Whether a steady crosswind that nobody wrote down may have curved the groups as much: one of three standard deviations or
   * less.
   */
  readonly couldBeWind: boolean;
  /** What would show a shift of this size; null when there is none to show. */
  readonly toShow: ArrowsToShow | null;
}

/** Groups at the zero range and at one far range, from which the curve is seen against the windage. */
interface ArrowsToShow {
  readonly range: Metres;
  /** At each of the two ranges. */
  readonly arrows: number;
}

/** Standard errors at which something is taken as shown: one chance in 22 of being wrong when nothing is there. */
const SHOWN = 2;
/** Standard deviations up to which an unwritten wind is thought of: beyond, it is rarer than an outlier. */
const THOUGHT_OF = 3;

/**
 * The verdict on a lean against the archer's own groups.
 *
 * Arrows to show a shift d at range x: groups of n there and at the zero range leave s x √(2/n) on the difference, so n = 2
 * (2 s x/d)².
 *
 * @param span ranges of the lean, m
 * @param arrowSdPerRange s, standard deviation of one arrow per metre of range, in one direction
 */
export function leanVerdict(
  lean: Lean,
  fit: LateralFit,
  span: readonly number[],
  arrowSdPerRange: number,
): LeanVerdict {
  const worst = lean.now.reduce(
    (best, shift, i) => (Math.abs(shift) > Math.abs(best.shift) ? { shift, at: at(span, i) } : best),
    { shift: si<'m'>(0), at: Math.max(...span) },
  );
  const arrowSd = arrowSdPerRange * worst.at;
  const significance = Math.abs(lean.turn) / lean.sd;
  const shown: LeanReason = significance < SHOWN ? 'not shown' : 'worth doing';
  const reason = Math.abs(worst.shift) < NOTICED_SHARE * arrowSd ? 'inside the groups' : shown;
  return {
    worthDoing: reason === 'worth doing',
    reason,
    shift: worst.shift,
    at: si(worst.at),
    arrowSd: si(arrowSd),
    measured: fit.residuals.length > 0,
    significance,
    couldBeWind: fit.residuals.length > 0 && Math.abs(lean.windAlike) <= THOUGHT_OF * fit.priors.crosswindSd,
    toShow:
      worst.shift === 0
        ? null
        : { range: si(worst.at), arrows: Math.ceil(2 * ((SHOWN * arrowSd) / worst.shift) ** 2) },
  };
}
