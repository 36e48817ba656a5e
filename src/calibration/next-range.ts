import { type Metres, si } from '../quantities/quantity.ts';
import { marksFor } from '../sight/marks.ts';
import { type Calibration, quadraticForm } from './fit.ts';
import { type MarkUncertainty, markUncertainty } from './mark-uncertainty.ts';

export interface NextRange {
  readonly range: Metres;
  /** Root mean square of the marks' uncertainties on the target over the ranges, m: now, and after that group. */
  readonly rmsNow: Metres;
  readonly rmsAfter: Metres;
  /** The uncertainty on the target at each of the ranges, m: now, and after that group. */
  readonly now: readonly Metres[];
  readonly after: readonly Metres[];
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
  const marks = markUncertainty(calibration, marksFor(calibration.rig, ranges));
  const rms = (variances: readonly number[]): number =>
    Math.sqrt(variances.reduce((a, b) => a + b, 0) / variances.length);
  const now = marks.map(({ onTargetSd }) => onTargetSd);
  const candidates = marks.map((candidate) => {
    const s =
      (group.arrowSdPerRange * candidate.range) / Math.sqrt(group.arrows) / Math.abs(candidate.heightPerUnit);
    const Cg = C.map((row) => row.reduce((sum, value, j) => sum + value * (candidate.gradient[j] ?? 0), 0));
    const spread = s * s + quadraticForm(C, candidate.gradient);
    const variances = marks.map((mark) => varianceAfter(mark, Cg, spread));
    return { range: candidate.range, variances, rms: rms(variances) };
  });
  const best = candidates.toSorted((a, b) => a.rms - b.rms)[0];
  if (best === undefined) throw new RangeError('no range to choose from');
  return {
    range: best.range,
    rmsNow: si(rms(now.map((sd) => sd ** 2))),
    rmsAfter: si(best.rms),
    now,
    after: best.variances.map((variance) => si(Math.sqrt(variance))),
  };
}

function varianceAfter(mark: MarkUncertainty, Cg: readonly number[], spread: number): number {
  const shared = mark.gradient.reduce((sum, value, j) => sum + value * (Cg[j] ?? 0), 0);
  return Math.max(mark.readingSd ** 2 - shared ** 2 / spread, 0) * mark.heightPerUnit ** 2;
}
