import { type Metres, si } from '../quantities/quantity.ts';
import { type Calibration, quadraticForm } from './fit.ts';
import { type MarkUncertainty, markUncertainty } from './mark-uncertainty.ts';

export interface NextRange {
  readonly range: Metres;
  /** Root mean square of the marks' uncertainties on the target over the ranges, m: now, and after that group. */
  readonly rmsNow: Metres;
  readonly rmsAfter: Metres;
}

export interface NextGroup {
  /** Arrows in the group to be shot. */
  readonly arrows: number;
  /** Standard deviation of one arrow per metre of range. */
  readonly arrowSdPerRange: number;
}

/**
 * The one of `ranges` (m) at which a further group would shrink the uncertainty of the marks of all of them most.
 *
 * A group adds the information g gᵀ/s² to the normal matrix, so each candidate costs one rank-one update of the covariance:
 * C′ = C − C g gᵀ C / (s² + gᵀ C g).
 */
export function nextRange(calibration: Calibration, ranges: readonly number[], group: NextGroup): NextRange {
  const C = calibration.covariance;
  const marks = markUncertainty(calibration, ranges);
  const rms = (variances: readonly number[]): number =>
    Math.sqrt(variances.reduce((a, b) => a + b, 0) / variances.length);
  const now = rms(marks.map(({ onTargetSd }) => onTargetSd ** 2));
  const candidates = marks.map((candidate) => {
    const s =
      (group.arrowSdPerRange * candidate.range) / Math.sqrt(group.arrows) / Math.abs(candidate.heightPerUnit);
    const Cg = C.map((row) => row.reduce((sum, value, j) => sum + value * (candidate.gradient[j] ?? 0), 0));
    const spread = s * s + quadraticForm(C, candidate.gradient);
    return { range: candidate.range, after: rms(marks.map((mark) => varianceAfter(mark, Cg, spread))) };
  });
  const best = candidates.toSorted((a, b) => a.after - b.after)[0];
  if (best === undefined) throw new RangeError('no range to choose from');
  return { range: best.range, rmsNow: si(now), rmsAfter: si(best.after) };
}

function varianceAfter(mark: MarkUncertainty, Cg: readonly number[], spread: number): number {
  const shared = mark.gradient.reduce((sum, value, j) => sum + value * (Cg[j] ?? 0), 0);
  return Math.max(mark.readingSd ** 2 - shared ** 2 / spread, 0) * mark.heightPerUnit ** 2;
}
