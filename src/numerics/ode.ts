import { Solver } from 'odex';
import { NumericalError } from './numerical-error.ts';
import { once } from './once.ts';

/**
 * Writes dy/dx at (x, y) into `dydx`; it must not keep or change `y`, and must accept trial states off the solution. A
 * state that is a tuple can be read by index without asking whether the element is there.
 */
export type Derivative<State extends readonly number[] = readonly number[]> = (
  x: number,
  y: State,
  dydx: number[],
) => void;

export interface Integrator<State extends readonly number[] = readonly number[]> {
  /** The state at x1, from the state y0 at x0, in either direction; y0 is left as it was. */
  advance(x0: number, y0: State, x1: number): State;
  /** Derivative calls since the integrator was made. */
  readonly evaluations: () => number;
}

export interface IntegratorOptions {
  /** One for all components of the state, or one for each; so with the next. */
  readonly relativeTolerance?: number | readonly number[];
  readonly absoluteTolerance?: number | readonly number[];
  /** The length of the first trial step of every advance, in units of x; the solver raises it to at least 1e-4. */
  readonly initialStep: number;
  /**
   * The longest advance that is tried as one step, in units of x; none by default. Where the tolerances refuse the step, a
   * shorter one is made and the rest goes as any other advance.
   */
  readonly leap?: number;
  /** No step is longer than this, in units of x: of a derivative with kinks, long ones would pass some unseen. */
  readonly longestStep?: number;
  /** Derivative calls that one advance may make. */
  readonly maxEvaluations?: number;
}

/** A flight takes 200 to 2000 calls; a hundred times that is a solution that is not going to arrive. */
const MAX_EVALUATIONS = 200_000;

/** What the solver takes for "as long as you like". */
const ANY_LENGTH = 0;

/**
 * One call in 32 is looked at, which costs 1 % where looking at all costs 20 %. It suffices: the solver carries a NaN on to the
 * end, where the result is checked, and an infinity makes it repeat a step until the evaluations run out.
 */
const INSPECTION_MASK = 31;

/**
 * An integrator of dy/dx = f(x, y) by extrapolation of the explicit midpoint rule, variable order and step.
 *
 * One solver is kept and used again by every advance, so an integrator serves one trajectory at a time; a
 * derivative must not call `advance` of its own integrator. Local error per step is held below
 * absoluteTolerance + relativeTolerance |y| for the root mean square over the components.
 *
 * @param dimension length of the state
 * @throws NumericalError from `advance`, with the x reached: 'non-finite' when an argument, a derivative or the result is not
 *   finite, 'too-many-evaluations' when the solution does not arrive
 * @source Hairer, Norsett, Wanner, Solving Ordinary Differential Equations I, 2nd ed. 1993, section II.9
 */
export function createIntegrator<State extends readonly number[]>(
  derivative: Derivative<State>,
  dimension: number,
  {
    relativeTolerance = 1e-8,
    absoluteTolerance = 1e-8,
    initialStep,
    leap = 0,
    longestStep = ANY_LENGTH,
    maxEvaluations = MAX_EVALUATIONS,
  }: IntegratorOptions,
): Integrator<State> {
  let origin = 0;
  let calls = 0;
  let callsAllowed = 0;
  let reached = 0;

  const inspect = (x: number, dydx: readonly number[]): void => {
    if (!allFinite(dydx) || !Number.isFinite(x))
      throw new NumericalError(
        'non-finite',
        `the derivative is not finite between x = ${reached} and ${x}`,
        reached,
      );
    reached = x;
    if (calls > callsAllowed)
      throw new NumericalError(
        'too-many-evaluations',
        `gave up after ${maxEvaluations} evaluations at x = ${x}`,
        x,
      );
  };

  const guarded: Derivative<State> = (s, y, dydx) => {
    const x = origin + s;
    derivative(x, y, dydx);
    if ((++calls & INSPECTION_MASK) === 0) inspect(x, dydx);
  };

  const solverFrom = (initialStepSize: number): Solver<State> =>
    new Solver<State>(guarded, dimension, {
      rawFunction: true,
      denseOutput: false,
      relativeTolerance,
      absoluteTolerance,
      initialStepSize,
      maxStepSize: longestStep,
      maxSteps: Infinity, // every step evaluates, and evaluations are limited
    });
  // A solver takes as long to make as a tenth of a flight, and most flights need one of the two.
  const walker = once(() => solverFrom(initialStep));
  const leaper = once(() => solverFrom(Number.MAX_VALUE));

  const walk = (x0: number, y0: State, length: number): State => {
    const solver = walker();
    origin = x0;
    forget(solver);
    return solver.solve(0, y0, length).y;
  };

  /** The solver halves its first step where the end is near: asked for twice the length, it tries the length itself. */
  const leapOver = (x0: number, y0: State, length: number): State => {
    const solver = leaper();
    origin = x0;
    forget(solver);
    // The first step is asked for by itself: a loop that is left after it takes as long again to close.
    const { value: step } = solver.solutionSegments(0, y0, 2 * length).next();
    if (step === undefined) return walk(x0, y0, length);
    return step.x1 === length ? step.y : walk(x0 + step.x1, step.y, length - step.x1);
  };

  return {
    advance(x0, y0, x1) {
      if (!Number.isFinite(x1 - x0))
        throw new NumericalError('non-finite', `cannot integrate from ${x0} to ${x1}`, x0);
      if (y0.length !== dimension || !allFinite(y0))
        throw new NumericalError(
          'non-finite',
          `the state at ${x0} is not ${dimension} numbers: ${y0.join(', ')}`,
          x0,
        );
      if (x1 === x0) return Object.assign([], y0); // a copy, of the type of the state
      callsAllowed = calls + maxEvaluations;
      reached = x0;
      // From 0 over a length that is not 0: the solver mistakes an end at x = 0 for no end.
      const length = x1 - x0;
      const y = (Math.abs(length) <= leap ? leapOver : walk)(x0, y0, length);
      if (!allFinite(y))
        throw new NumericalError(
          'non-finite',
          `the state is not finite between x = ${reached} and ${x1}`,
          reached,
        );
      return y;
    },
    evaluations: () => calls,
  };
}

/**
 * What a solver knows of steps of each order from an earlier advance is taken from it, so that an advance does not depend on what
 * was asked before. After a rejected step it takes the smaller of two lengths, the second of an order it may not have tried yet:
 * were that empty, the next step would be NaN long.
 */
function forget<State extends readonly number[]>({ hh, w }: Solver<State>): void {
  hh.fill(Number.POSITIVE_INFINITY);
  w.fill(Number.NaN, 1);
}

/** x - x is 0 for a finite number alone. */
function allFinite(values: readonly number[]): boolean {
  let sum = 0;
  for (const value of values) sum += value;
  return sum - sum === 0;
}
