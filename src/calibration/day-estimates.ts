import { at } from '../numerics/at.ts';
import { forwardSolve } from '../numerics/cholesky.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import { type Metres, type MetresPerSecond, si } from '../quantities/quantity.ts';
import { possibleBreaks } from './days.ts';
import type { Calibration } from './fit.ts';
import type { MarkUncertainty } from './mark-uncertainty.ts';

/** How a day differed from the mean of all days, as far as what was shot on it tells. */
export interface DayEstimate {
  readonly day: string;
  readonly measurements: number;
  /**
   * Of the launch speed; what the air and a wind did beyond what the file says is told as the speed that would have done the
   * same.
   */
  readonly speedOffset: MetresPerSecond;
  readonly sd: MetresPerSecond;
}

/**
 * Every day that the file names, in the order of its first measurement.
 *
 *   t = u' V^-1 r,   var t = Σc² - u' (V^-1 - V^-1 J C J' V^-1) u,   u = Σ c_e shift_e
 *
 * over what was measured on the day; c turns each thing that a day changes into the speed that does the same.
 *
 * @source Henderson, Biometrics 31 (1975) 423-447, for the prediction of random effects
 */
export function dayEstimates({ problem, linear, widening }: Calibration): readonly DayEstimate[] {
  const { measurements, days } = problem;
  const { shifts, factor, jacobian, residuals, covariance } = linear;
  const named = [...new Set(measurements.flatMap(({ day }) => (day === null ? [] : [day])))];
  return named.map((day) => {
    const of = (e: number): readonly number[] =>
      measurements.map((measurement, i) => (measurement.day === day ? at(at(shifts, i), e) : 0));
    const speed = of(0);
    const size = dot(speed, speed);
    const causes = at(shifts, 0).map((_, e) => ({
      shift: of(e),
      likeness: size > 0 ? dot(of(e), speed) / size : 0,
    }));
    const u = speed.map((_, i) =>
      causes.reduce((sum, { shift, likeness }) => sum + likeness * at(shift, i), 0),
    );
    const whitened = forwardSolve(factor, u);
    const pull = at(jacobian, 0).map((_, j) =>
      dot(
        whitened,
        jacobian.map((row) => at(row, j)),
      ),
    );
    const before = causes.reduce((sum, { likeness }) => sum + likeness ** 2, 0);
    const told = dot(whitened, whitened) - quadraticForm(covariance, pull);
    return {
      day,
      measurements: measurements.filter((measurement) => measurement.day === day).length,
      speedOffset: si(days.speed * dot(whitened, residuals)),
      sd: si(days.speed * widening * Math.sqrt(Math.max(before - told, 0))),
    };
  });
}

/** By how much the second of two evenings that nobody told apart is thought to differ in speed: by this many of one day's sd. */
export const EVENINGS_APART = 2;

/**
 * How far off a mark could be, on the target, if what names no day was shot on two evenings that differ in speed by two standard
 * deviations of one day's; the worst of the possible breaks. 0 where the days are named, or one range alone was shot.
 */
export function hiddenByEvenings(
  { problem: { measurements }, linear }: Calibration,
  { gradient, heightPerUnit }: MarkUncertainty,
): Metres {
  const { shifts, factor, jacobian, covariance } = linear;
  const moved = possibleBreaks(measurements).map((end) => {
    const second = measurements.map(({ day, range }, i) =>
      day === null && range > end ? EVENINGS_APART * at(at(shifts, i), 0) : 0,
    );
    const whitened = forwardSolve(factor, second);
    // J' V^-1 d; the parameters move by C times that, and the mark by its gradient.
    return at(jacobian, 0).reduce((sum, _, j) => {
      const column = jacobian.map((row) => at(row, j));
      const along = gradient.reduce((total, slope, k) => total + slope * at(at(covariance, k), j), 0);
      return sum + along * dot(whitened, column);
    }, 0);
  });
  return si(Math.max(0, ...moved.map(Math.abs)) * Math.abs(heightPerUnit));
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * at(b, i), 0);
