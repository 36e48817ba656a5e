import { at } from '../numerics/at.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import { type Metres, si } from '../quantities/quantity.ts';
import { type Mark, marksFor } from '../sight/marks.ts';
import { readingAt } from '../sight/scale.ts';
import type { Calibration } from './fit.ts';
import { type MarkUncertainty, markUncertainty } from './mark-uncertainty.ts';
import type { Measurement } from './measurement.ts';
import { TRAVEL_SCALE } from './parameters.ts';
import { dayShifts } from './prediction.ts';

export interface NextRange {
  readonly range: Metres;
  /** Root mean square of the marks' uncertainties on the target over the ranges, m: now, and after that group. */
  readonly rmsNow: Metres;
  readonly rmsAfter: Metres;
  /** The uncertainty on the target at each of the ranges, m: now, and after that group. */
  readonly now: readonly Metres[];
  readonly after: readonly Metres[];
}

/** A group that is yet to be shot. */
export interface PlannedGroup {
  /**
   * Standard uncertainty on the target of all that is its mark's alone, as of the marks of the fit: group, reading and range, m.
   */
  readonly sdAt: (range: Metres) => Metres;
  /** Where it may be shot, m; at all of the ranges unless stated. */
  readonly candidates?: readonly number[];
  /** Whether the group would be on the target where the mark has this standard uncertainty on it; always, unless stated. */
  readonly isOnTarget?: (range: Metres, markSd: Metres) => boolean;
}

/**
 * Where a further group would shrink the uncertainty of the marks of all `ranges` (m) most, of those where it can be shot; where
 * it would be on the target nowhere, the nearest of them.
 *
 * A group adds the information g gᵀ/s² to the normal matrix, so each candidate costs one rank-one update of the covariance:
 * C′ = C − C g gᵀ C / (s² + gᵀ C g). It is shot on another day than any before: s² holds that day's speed, air and wind too.
 */
export function nextRange(
  calibration: Calibration,
  ranges: readonly number[],
  { sdAt, candidates: where = ranges, isOnTarget = () => true }: PlannedGroup,
): NextRange {
  const C = calibration.covariance;
  const table = marksFor(calibration.rig, [...ranges, ...where]);
  const uncertainties = markUncertainty(calibration, table);
  const marks = uncertainties.slice(0, ranges.length);
  const otherDay = dayVariances(calibration, table.marks.slice(ranges.length));
  const rms = (variances: readonly number[]): number =>
    Math.sqrt(variances.reduce((a, b) => a + b, 0) / variances.length);
  const now = marks.map(({ onTargetSd }) => onTargetSd);
  const candidates = uncertainties.slice(ranges.length).map((candidate, i) => {
    const s = Math.sqrt(sdAt(candidate.range) ** 2 + at(otherDay, i)) / Math.abs(candidate.heightPerUnit);
    const Cg = C.map((row) => row.reduce((sum, value, j) => sum + value * at(candidate.gradient, j), 0));
    const spread = s * s + quadraticForm(C, candidate.gradient);
    const variances = marks.map((mark) => varianceAfter(mark, Cg, spread));
    const isSeen = isOnTarget(candidate.range, candidate.onTargetSd);
    return { range: candidate.range, isSeen, variances, rms: rms(variances) };
  });
  const best =
    candidates.filter(({ isSeen }) => isSeen).toSorted((a, b) => a.rms - b.rms)[0] ??
    candidates.toSorted((a, b) => a.range - b.range)[0];
  if (best === undefined) throw new RangeError('no range to choose from');
  return {
    range: best.range,
    rmsNow: si(rms(now.map((sd) => sd ** 2))),
    rmsAfter: si(best.rms),
    now,
    after: best.variances.map((variance) => si(Math.sqrt(variance))),
  };
}

/** What a day does to the height of a hit at the range of each mark, m². */
function dayVariances({ rig, problem }: Calibration, marks: readonly Mark[]): readonly number[] {
  const scale = rig.scale ?? TRAVEL_SCALE;
  const shots = marks.map(
    ({ range, travel }): Measurement => ({
      kind: 'mark',
      range,
      reading: readingAt(scale, travel),
      vertical: 0,
      sd: si(0),
      cant: si(0),
      day: null,
    }),
  );
  return dayShifts(rig, shots, problem.days).map((shifts) =>
    shifts.reduce((sum, shift) => sum + shift ** 2, 0),
  );
}

function varianceAfter(mark: MarkUncertainty, Cg: readonly number[], spread: number): number {
  const shared = mark.gradient.reduce((sum, value, j) => sum + value * at(Cg, j), 0);
  return Math.max(mark.readingSd ** 2 - shared ** 2 / spread, 0) * mark.heightPerUnit ** 2;
}
