import { at } from '../numerics/at.ts';
import { choleskyFactor, forwardSolve } from '../numerics/cholesky.ts';
import { chiSquaredSurvival } from '../numerics/distributions.ts';
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
export const dayEstimates = (calibration: Calibration): readonly DayEstimate[] =>
  dayPulls(calibration).map(({ day, measurements, before, whitened, pull }) => {
    const { problem, linear, widening } = calibration;
    const told = dot(whitened, whitened) - quadraticForm(linear.covariance, pull);
    return {
      day,
      measurements,
      speedOffset: si(problem.days.speed * dot(whitened, linear.residuals)),
      sd: si(problem.days.speed * widening * Math.sqrt(Math.max(before - told, 0))),
    };
  });

/** Fewer days than this always agree. */
const FEWEST_DAYS = 3;

/**
 * The chance that days of one bow differ more than these do, by what evenings usually differ; null for fewer than three.
 *
 *   t' T^-1 t,   T_kl = u_k' (V^-1 - V^-1 J C J' V^-1) u_l
 *
 * as a chi-squared with a degree of freedom for each day.
 */
export function daysAgree(calibration: Calibration): number | null {
  const { covariance, residuals } = calibration.linear;
  const days = dayPulls(calibration);
  if (days.length < FEWEST_DAYS) return null;
  const told = days.map((one) =>
    days.map(
      (other) =>
        dot(one.whitened, other.whitened) -
        one.pull.reduce((sum, slope, i) => sum + slope * dot(at(covariance, i), other.pull), 0),
    ),
  );
  const sizes = told.map((row, k) => Math.sqrt(at(row, k)));
  // Days of which nothing can be told have no part.
  if (sizes.some((size) => !(size > 0))) return null;
  const factor = choleskyFactor(
    told.map((row, k) =>
      row.map((value, l) => value / (at(sizes, k) * at(sizes, l)) + (k === l ? ROUNDING : 0)),
    ),
  );
  const scores = forwardSolve(
    factor,
    days.map(({ whitened }, k) => dot(whitened, residuals) / at(sizes, k)),
  );
  return chiSquaredSurvival(dot(scores, scores), days.length);
}
/** Keeps days that say the same from making the matrix singular. */
const ROUNDING = 1e-9;

interface DayPull {
  readonly day: string;
  readonly measurements: number;
  /** Variance before anything was shot, of a speed of one standard deviation. */
  readonly before: number;
  /** L^-1 u, and J' V^-1 u. */
  readonly whitened: readonly number[];
  readonly pull: readonly number[];
}

function dayPulls({ problem, linear }: Calibration): readonly DayPull[] {
  const { measurements } = problem;
  const { shifts, factor, jacobian } = linear;
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
    return {
      day,
      measurements: measurements.filter((measurement) => measurement.day === day).length,
      before: causes.reduce((sum, { likeness }) => sum + likeness ** 2, 0),
      whitened,
      pull,
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
