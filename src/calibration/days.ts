import { at } from '../numerics/at.ts';
import { choleskyFactor } from '../numerics/cholesky.ts';
import type { Rows } from '../numerics/linear-algebra.ts';
import { FOOT, MILE_PER_HOUR } from '../quantities/exact.ts';
import type { Rig } from '../sight/rig.ts';
import type { DayPriors, Measurement } from './measurement.ts';
import { type Beside, besideOf } from './parameters.ts';
import { dayShifts } from './prediction.ts';

/**
 * A day of which nothing else is known.
 *
 * @source common practice, no source: 1 ft/s between evenings of one bow; 1 % of density is 5 degF or 0.3 inHg; 1.5 mph of wind
 *   is not felt
 */
export const USUAL_DAY: DayPriors = { speed: FOOT, density: 0.01, headWind: 1.5 * MILE_PER_HOUR };

/**
 * The chance that two measurements were made on one day.
 *
 * Those that name a day are of that day. Of those that name none, two evenings may be behind the list: the nearer ranges shot on
 * one and the farther on the other, with the break in the widest gap between neighbouring ranges. Of several gaps as wide, each
 * is as likely.
 *
 * @returns a row and a column for each measurement; 1 for itself
 */
export function sameDayChances(
  measurements: readonly Pick<Measurement, 'range' | 'day'>[],
): readonly (readonly number[])[] {
  const breaks = possibleBreaks(measurements);
  return measurements.map((a) =>
    measurements.map((b) => {
      if (a.day !== b.day) return 0;
      if (a.day !== null || breaks.length === 0) return 1;
      const [near, far] = [Math.min(a.range, b.range), Math.max(a.range, b.range)];
      return 1 - breaks.filter((range) => near < range && range < far).length / breaks.length;
    }),
  );
}

/** Gaps this near to the widest count as wide as that, relative. */
const AS_WIDE = 0.9;

/**
 * Where one evening may have ended, among measurements that name no day: middles of the widest gaps between neighbouring ranges,
 * m.
 */
export function possibleBreaks(
  measurements: readonly Pick<Measurement, 'range' | 'day'>[],
): readonly number[] {
  const undated = measurements.flatMap(({ range, day }): readonly number[] => (day === null ? [range] : []));
  const sorted = [...new Set(undated)].toSorted((a, b) => a - b);
  const gaps = sorted.slice(1).map((far, i) => ({ from: at(sorted, i), width: far - at(sorted, i) }));
  const widest = Math.max(0, ...gaps.map(({ width }) => width));
  return gaps.filter(({ width }) => width >= AS_WIDE * widest).map(({ from, width }) => from + width / 2);
}

/** The errors of all measurements together. */
export interface SharedErrors {
  /** What one standard deviation of each thing that a day changes does to each measurement. */
  readonly shifts: Rows;
  /** L with L L' the covariance of the measurements' errors. */
  readonly factor: Rows;
}

/** The covariance of measurements that days have in common: V_ij = s_i² [i = j] + P(same day) Σ_e shift_ie shift_je. */
export function sharedErrors(
  rig: Rig,
  measurements: readonly Measurement[],
  days: DayPriors,
  beside: Beside = besideOf({}),
): SharedErrors {
  const shifts = dayShifts(rig, measurements, days, beside);
  const chances = sameDayChances(measurements);
  const covariance = measurements.map(({ sd }, i) =>
    measurements.map((_, j) => {
      const shared = at(shifts, i).reduce((sum, shift, e) => sum + shift * at(at(shifts, j), e), 0);
      return at(at(chances, i), j) * shared + (i === j ? sd ** 2 : 0);
    }),
  );
  return { shifts, factor: choleskyFactor(covariance) };
}
