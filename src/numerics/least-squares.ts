import { at } from './at.ts';
import {
  columnLengths,
  covarianceOf,
  dampedStep,
  type Linearised,
  linearise,
  reducible,
  transposedTimes,
} from './damped-step.ts';
import { changeAllowed, descend, FIRST_DAMPING, type KnownPlace, placeAt } from './descent.ts';
import {
  type DifferenceOptions,
  differenceJacobian,
  jacobianAccuracy,
  type Residuals,
} from './difference-jacobian.ts';
import type { Rows } from './linear-algebra.ts';
import { unlessNumericalError } from './numerical-error.ts';
import { clamped, freeParameters, type ParameterSpace, relativeChange } from './parameter-space.ts';

export interface LeastSquaresOptions extends DifferenceOptions {
  /** The derivatives of the residuals by the parameters, a row for each residual; differences serve when it is absent. */
  readonly jacobian?: (parameters: readonly number[]) => Rows;
  /** 200 by default; a curved valley of bad scaling has needed 800. */
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
   * iterations: the limit was reached. non-finite: the residuals cannot be had at the start, or on no side of the best place.
   * singular: a parameter, or a combination of them, does not change the residuals. stuck: no step reduces the residuals although
   * their derivatives say that one should, as when they jump or are noisier than `precision` says.
   */
  readonly reason: 'iterations' | 'non-finite' | 'singular' | 'stuck';
}

/** Scales of the parameters follow the Jacobian up at once and down by half, so that one flat place does not free a parameter. */
const SCALE_DECAY = 0.5;
/** Differences take no parameter for smaller than this share of its size at the start. */
const SMALLEST_SIZE = 1e-4;
/** What may remain of the residuals, or of the parameters, when steps have become too small to matter. */
const CLOSE_ENOUGH = { residuals: 1e-3, parameters: 1e-4 };

/**
 * The parameters that minimise the sum of squares of the residuals, near `start`: damped Gauss-Newton steps with a
 * second-order correction.
 *
 * Every step minimises |r + J s|^2 + damping |D s|^2, through orthogonal factors; D holds the lengths of the columns of J, so the
 * units of the parameters do not matter. The damping follows the ratio of the actual to the predicted reduction. Far from
 * the minimum a step is bent along the second derivative of the residuals, for one evaluation more, and shortened where that
 * bends it too far. Parameters stop at their bounds and are held there while the residuals push outwards. Weights and
 * priors belong in the residuals: (seen - model)/sd, (value - prior)/sd.
 *
 * @param residuals throwing a NumericalError, or returning a number that is not finite, shortens the step; any other
 *   error passes through
 * @param start moved into the bounds
 * @returns the verdict with the best place found (no residuals if there is none); look at `outcome` before using it
 * @source More, The Levenberg-Marquardt algorithm: implementation and theory, Lecture Notes in Mathematics 630 (1978) 105-116,
 *   for scaling; Nielsen, Damping parameter in Marquardt's method, IMM-REP-1999-05, eq. 2.4; Transtrum, Sethna, arXiv:1201.5885
 *   (2012) for the correction; Bates, Watts, Technometrics 23 (1981) 179-183 for the gradient test
 * @checked reference/nist-strd
 */
export function leastSquares(
  residuals: Residuals,
  start: readonly number[],
  options: LeastSquaresOptions = {},
): Converged | Failed {
  const { maxIterations = 200, gradientTolerance = 1e-8, stepTolerance = 1e-12 } = options;
  let evaluations = 0;
  const counted: Residuals = (parameters) => {
    evaluations++;
    return residuals(parameters);
  };
  const first = placeAt(counted, clamped(options, start));
  if (first === null) {
    const nowhere = { parameters: start, residuals: [], sumOfSquares: Infinity, jacobian: [], iterations: 0 };
    return { outcome: 'failed', reason: 'non-finite', evaluations, ...nowhere };
  }

  // A parameter that comes to rest at 0 has no size of its own there.
  const sizes = options.typical ?? start.map((value) => Math.abs(value) || 1);
  const space = { ...options, typical: sizes };
  const differences = (place: KnownPlace) => {
    const own = place.parameters.map((value, j) => Math.max(Math.abs(value), SMALLEST_SIZE * at(sizes, j)));
    const scaled = { ...options, typical: options.typical ?? own };
    return differenceJacobian(counted, place.parameters, place.residuals, scaled);
  };
  let place: KnownPlace = first;
  let scales = start.map(() => 0);
  let damping = FIRST_DAMPING;
  let flat = false;
  let jacobian: Rows = [];
  for (let iterations = 0; ; iterations++) {
    const { parameters, residuals: here, sumOfSquares } = place;
    const found = () => ({ parameters, residuals: here, sumOfSquares, jacobian, evaluations, iterations });
    const derivatives = unlessNumericalError(() => options.jacobian?.(parameters) ?? differences(place));
    if (derivatives === null) return { outcome: 'failed', reason: 'non-finite', ...found() };
    jacobian = derivatives;
    scales = columnLengths(jacobian).map((length, j) => Math.max(SCALE_DECAY * at(scales, j), length));
    const free = freeParameters(space, parameters, transposedTimes(jacobian, here), stepTolerance);
    const problem = linearise(
      jacobian,
      here,
      scales.map((scale) => scale || 1),
      free,
    );

    const concluded = (reason: Converged['reason']): Converged | Failed => {
      const covariance = unlessNumericalError(() => covarianceOf(jacobian, jacobianAccuracy(options)));
      if (covariance === null) return { outcome: 'failed', reason: 'singular', ...found() };
      if (!isClose(problem, place, space)) return { outcome: 'failed', reason: 'stuck', ...found() };
      return { outcome: 'converged', reason, covariance, ...found() };
    };
    if (reducible(problem) <= gradientTolerance ** 2 * sumOfSquares) return concluded('gradient');
    if (flat) return concluded('reduction');
    if (iterations === maxIterations) return { outcome: 'failed', reason: 'iterations', ...found() };
    const descent = descend(problem, place, counted, { space, stepTolerance, damping });
    if (descent.ended) return concluded(descent.ended);
    ({ place, damping, flat } = descent);
  }
}

/** Whether little is left to gain, in residuals or by the undamped step in parameters. */
function isClose(
  problem: Linearised,
  { parameters, sumOfSquares }: KnownPlace,
  space: ParameterSpace,
): boolean {
  if (reducible(problem) <= CLOSE_ENOUGH.residuals ** 2 * sumOfSquares) return true;
  const { step } = dampedStep(problem, 0, changeAllowed(space, parameters));
  return relativeChange(space, parameters, step) <= CLOSE_ENOUGH.parameters;
}
