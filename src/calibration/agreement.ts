import { at } from '../numerics/at.ts';
import { chiSquaredSurvival } from '../numerics/distributions.ts';
import { unlessNumericalError } from '../numerics/numerical-error.ts';
import { atBounds, type Calibration, type CalibrationProblem, calibrate } from './fit.ts';
import { parametersOf, priorOf } from './parameters.ts';

/** How well measurements agree with one another and with what was known before. */
export interface Agreement {
  readonly chiSquared: number;
  /** How large `chiSquared` is expected to be. */
  readonly freedom: number;
  /** Chance of a larger `chiSquared` if every stated uncertainty is right. */
  readonly chance: number;
}

/** With less freedom than this nothing is left over that could disagree. */
const NO_FREEDOM = 0.5;

/**
 * The agreement of a fit.
 *
 *   freedom = n - Σ (1 - C_kk / s_k²)   over the unknowns k of which nothing was known before
 *
 * n measurements, C the covariance of the unknowns, s_k the width of a prior that says nothing: such an unknown follows the
 * measurements without resistance, so what it is fitted to cannot disagree with it.
 */
export function agreementOf({ problem, chiSquared, linear }: Calibration): Agreement {
  const followed = parametersOf(problem.priors).reduce((sum, name, k) => {
    const { sd, yardstick } = priorOf(problem.priors, name);
    return yardstick === undefined ? sum : sum + 1 - at(at(linear.covariance, k), k) / sd ** 2;
  }, 0);
  const freedom = problem.measurements.length - followed;
  return {
    chiSquared,
    freedom,
    chance: freedom < NO_FREEDOM ? 1 : chiSquaredSurvival(chiSquared, freedom),
  };
}

/** A fit and how well it agrees. */
export interface Tried {
  readonly calibration: Calibration;
  readonly agreement: Agreement;
}

/** The fit of a problem that may have none: null where no minimum is found or no bow would shoot so. */
export const tried = (problem: CalibrationProblem): Tried | null =>
  unlessNumericalError(() => {
    const calibration = calibrate(problem);
    return atBounds(calibration).length > 0 ? null : { calibration, agreement: agreementOf(calibration) };
  });
