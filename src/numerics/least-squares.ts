import {
  acceleration,
  columnLengths,
  covarianceOf,
  type DampedStep,
  dampedStep,
  type Linearised,
  linearise,
  predictedReduction,
  reducible,
  scaledLength,
  squares,
  times,
  transposedTimes,
} from './damped-step.ts';
import {
  type DifferenceOptions,
  differenceJacobian,
  jacobianAccuracy,
  type Residuals,
  residualsAt,
} from './difference-jacobian.ts';
import type { Rows } from './linear-algebra.ts';
import { NumericalError } from './numerical-error.ts';

export interface LeastSquaresOptions extends DifferenceOptions {
  /** The derivatives of the residuals by the parameters, a row for each residual; differences serve when it is absent. */
  readonly jacobian?: (parameters: readonly number[]) => Rows;
  readonly maxIterations?: number;
  /** Largest share of the length of the residuals that a small step could still take away; 1e-8 by default. */
  readonly gradientTolerance?: number;
  /** Largest change of every parameter, as a share of its size, in the last step; 1e-12 by default. */
  readonly stepTolerance?: number;
}

/** The best place found. */
interface Found {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  readonly sumOfSquares: number;
  /** At `parameters`, a row for each residual. */
  readonly jacobian: Rows;
  /** Calls of the residuals. */
  readonly evaluations: number;
  readonly iterations: number;
}

export interface Converged extends Found {
  readonly outcome: 'converged';
  /**
   * Which test was met. gradient: no small step reduces the residuals. step: the parameters no longer change. reduction: the
   * sum of squares no longer changes, to rounding.
   */
  readonly reason: 'gradient' | 'step' | 'reduction';
  /** (J'J)^-1: the covariance of the parameters if the residuals have variance 1. It takes no notice of bounds. */
  readonly covariance: Rows;
}

export interface Failed extends Found {
  readonly outcome: 'failed';
  /**
   * iterations: the limit was reached. non-finite: the residuals cannot be had at the start or beside the best place. singular:
   * a parameter, or a combination of them, does not change the residuals. stuck: no step reduces the residuals although their
   * derivatives say that one should, as when they jump or are noisier than `precision` says.
   */
  readonly reason: 'iterations' | 'non-finite' | 'singular' | 'stuck';
}

const MAX_ITERATIONS = 200;
const GRADIENT_TOLERANCE = 1e-8;
const STEP_TOLERANCE = 1e-12;
/** Relative reduction of a sum of squares that rounding hides. */
const REDUCTION_TOLERANCE = 1e-15;

/** Damping of the first step, of the square of the scaled Jacobian: steps begin near those of the undamped equations. */
const FIRST_DAMPING = 1e-3;
/** Where damping starts to rise again, and the least that it falls to: both far below what changes a step that is any good. */
const RISING_DAMPING = 1e-12;
const LEAST_DAMPING = 1e-20;
/** Scales of the parameters follow the Jacobian up at once and down by half, so that one flat place does not free a parameter. */
const SCALE_DECAY = 0.5;
/** A step changes no parameter by more than this many times its size. */
const LONGEST_STEP = 10;
/** Share of the predicted reduction that makes a step worth taking. */
const WORTH_TAKING = 1e-4;
/** Share of a step over which its curvature is measured, and how large the correction by it may be before the step is shortened. */
const CURVATURE_SHARE = 0.1;
const MOST_BENT = 1;
/** Below this share of the residuals' length still to be taken away, curvature is no longer worth an evaluation. */
const NEARLY_STRAIGHT = 1e-3;
/** What may remain of the residuals, or of the parameters, when steps have become too small to matter. */
const CLOSE_ENOUGH = { residuals: 1e-3, parameters: 1e-4 };

/**
 * The parameters that minimise the sum of squares of the residuals, near `start`: damped Gauss-Newton steps, second-order correction.
 *
 * Every step minimises |r + J s|^2 + damping |D s|^2, through orthogonal factors; D holds the lengths of the columns of J, so the
 * units of the parameters do not matter. The damping follows the ratio of the actual to the predicted reduction. Far from the minimum a
 * step is bent along the second derivative of the residuals, for one evaluation more, and shortened where that bends it too
 * far. Parameters stop at their bounds and are held there while the residuals push outwards. Weights and priors belong in
 * the residuals: (seen - model)/sd, (value - prior)/sd.
 *
 * @param residuals throwing a NumericalError, or returning a number that is not finite, shortens the step; any other error passes through
 * @param start moved into the bounds
 * @returns the verdict with the best place found; look at `outcome` before using it
 * @source More, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630 (1978) 105-116, for
 *   scaling; Nielsen, Damping parameter in Marquardt's method, IMM-REP-1999-05, eq. 2.4; Transtrum, Sethna, arXiv:1201.5885 (2012)
 *   for the correction; Bates, Watts, Technometrics 23 (1981) 179-183 for the gradient test
 * @checked reference/nist-strd
 */
export function leastSquares(
  residuals: Residuals,
  start: readonly number[],
  options: LeastSquaresOptions = {},
): Converged | Failed {
  const { lower = [], upper = [], typical = [], maxIterations = MAX_ITERATIONS } = options;
  const { gradientTolerance = GRADIENT_TOLERANCE, stepTolerance = STEP_TOLERANCE } = options;
  const low = (j: number) => lower[j] ?? -Infinity;
  const high = (j: number) => upper[j] ?? Infinity;
  const within = (place: readonly number[]) => place.map((v, j) => Math.min(Math.max(v, low(j)), high(j)));
  let evaluations = 0;
  const evaluated: Residuals = (place) => {
    evaluations++;
    return residuals(place);
  };

  let parameters = within(start);
  let here = residualsAt(evaluated, parameters) ?? [];
  let sumOfSquares = here.length > 0 ? squares(here) : Infinity;
  let jacobian: Rows = [];
  let iterations = 0;
  const failed = (reason: Failed['reason']): Failed => {
    return {
      outcome: 'failed',
      reason,
      parameters,
      residuals: here,
      sumOfSquares,
      jacobian,
      evaluations,
      iterations,
    };
  };
  if (here.length === 0) return failed('non-finite');

  const sizeOf = (j: number) => Math.max(Math.abs(parameters[j] ?? 0), typical[j] ?? 0) || 1;
  const shareOf = (step: readonly number[]) => Math.max(...step.map((s, j) => Math.abs(s) / sizeOf(j)));
  const accuracy = jacobianAccuracy(options);
  const concluded = (reason: Converged['reason'], problem: Linearised): Converged | Failed => {
    try {
      const close =
        reducible(problem) <= CLOSE_ENOUGH.residuals ** 2 * sumOfSquares ||
        shareOf(dampedStep(problem, 0).step) <= CLOSE_ENOUGH.parameters;
      if (!close) return failed('stuck');
      const covariance = covarianceOf(jacobian, accuracy);
      return { ...failed('stuck'), outcome: 'converged', reason, covariance };
    } catch (error) {
      if (error instanceof NumericalError) return failed('singular');
      throw error;
    }
  };

  let scales = start.map(() => 0);
  let damping = FIRST_DAMPING;
  let rise = 2;
  let noFurther = false;
  for (; iterations < maxIterations; iterations++) {
    try {
      jacobian = options.jacobian?.(parameters) ?? differenceJacobian(evaluated, parameters, here, options);
    } catch (error) {
      if (error instanceof NumericalError) return failed('non-finite');
      throw error;
    }
    const lengths = columnLengths(jacobian);
    scales = scales.map((scale, j) => Math.max(SCALE_DECAY * scale, lengths[j] ?? 0));
    const pull = transposedTimes(jacobian, here);
    const isFree = (value: number, j: number) => {
      const margin = stepTolerance * sizeOf(j);
      const outwards = (pull[j] ?? 0) > 0 ? value <= low(j) + margin : value >= high(j) - margin;
      return !(outwards && pull[j] !== 0);
    };
    const free = [...parameters.keys()].filter((j) => isFree(parameters[j] ?? 0, j));
    const problem = linearise(
      jacobian,
      here,
      scales.map((scale) => scale || 1),
      free,
    );
    const left = reducible(problem);
    if (left <= gradientTolerance ** 2 * sumOfSquares) return concluded('gradient', problem);
    if (noFurther) return concluded('reduction', problem);

    for (let taken = false; !taken; ) {
      const damped = dampedStep(problem, damping);
      const straight = within(parameters.map((value, j) => value + (damped.step[j] ?? 0)));
      const step = straight.map((value, j) => value - (parameters[j] ?? 0));
      const share = shareOf(step);
      if (share <= stepTolerance) return concluded('step', problem);

      const predicted = predictedReduction(problem, step);
      const bend =
        left > NEARLY_STRAIGHT ** 2 * sumOfSquares
          ? bendOf(problem, damped, step, here, parameters, evaluated)
          : [];
      const place =
        bend === null || share > LONGEST_STEP
          ? null
          : within(straight.map((value, j) => value + (bend[j] ?? 0)));
      const there = place === null ? null : residualsAt(evaluated, place);
      const reached = there === null ? Infinity : squares(there);
      const gain = (sumOfSquares - reached) / predicted;
      noFurther = there !== null && predicted <= REDUCTION_TOLERANCE * sumOfSquares;
      taken = predicted > 0 && gain > WORTH_TAKING;
      if (taken && place !== null && there !== null) {
        damping = Math.max(damping * Math.max(0.1, 1 - (2 * gain - 1) ** 3), LEAST_DAMPING);
        rise = 2;
        [parameters, here, sumOfSquares] = [place, there, reached];
      } else {
        if (noFurther) return concluded('reduction', problem);
        damping = Math.max(damping, RISING_DAMPING) * rise;
        rise *= 2;
      }
    }
  }
  return failed('iterations');
}

/** Half the second-order correction of a step, or null where it cannot be had or would bend the step too far. */
function bendOf(
  problem: Linearised,
  damped: DampedStep,
  step: readonly number[],
  here: readonly number[],
  parameters: readonly number[],
  residuals: Residuals,
): number[] | null {
  const share = CURVATURE_SHARE;
  const near = residualsAt(
    residuals,
    parameters.map((value, j) => value + share * (step[j] ?? 0)),
  );
  if (near === null) return null;
  const along = times(problem.jacobian, step);
  const curvature = near.map((r, i) => (2 / share) * ((r - (here[i] ?? 0)) / share - (along[i] ?? 0)));
  const bend = acceleration(problem, damped, curvature).map((value) => value / 2);
  return 4 * scaledLength(problem, bend) > MOST_BENT * scaledLength(problem, step) ? null : bend;
}
