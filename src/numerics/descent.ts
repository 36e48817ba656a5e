import { at } from './at.ts';
import {
  acceleration,
  type DampedStep,
  dampedStep,
  type Linearised,
  predictedReduction,
  reducible,
  scaledLength,
  squares,
} from './damped-step.ts';
import { type Residuals, residualsAt } from './difference-jacobian.ts';
import { times } from './linear-algebra.ts';
import { clamped, clampedOne, type ParameterSpace, relativeChange } from './parameter-space.ts';

/** A place where the residuals are known. */
export interface KnownPlace {
  readonly parameters: readonly number[];
  readonly residuals: readonly number[];
  readonly sumOfSquares: number;
}

/** The place of some parameters, or null where the residuals cannot be had. */
export function placeAt(residuals: Residuals, parameters: readonly number[]): KnownPlace | null {
  const found = residualsAt(residuals, parameters);
  return found === null ? null : { parameters, residuals: found, sumOfSquares: squares(found) };
}

export type Descent =
  | {
      readonly ended: false;
      readonly place: KnownPlace;
      readonly damping: number;
      /** The reduction was as small as rounding. */
      readonly flat: boolean;
    }
  /** No lower place was found before the step became negligible, or the reduction is too small to measure. */
  | { readonly ended: 'step' | 'reduction' };

/** Damping of the first step, of the square of the scaled Jacobian: steps begin near those of the undamped equations. */
export const FIRST_DAMPING = 1e-3;
/** Where damping starts to rise again, and the least that it falls to: both far below what changes a step that is any good. */
const RISING_DAMPING = 1e-12;
const LEAST_DAMPING = 1e-20;
/** Largest factor by which a step as good as predicted lowers the damping. */
const RELIEF = 0.1;
/** Relative reduction of a sum of squares that its rounding hides. */
const UNMEASURABLE = 1e-16;
/** A step changes no parameter by more than this many times its size. */
const LONGEST_STEP = 10;
/** Share of the predicted reduction that makes a step worth taking. */
const WORTH_TAKING = 1e-4;
/** Share of a step over which its curvature is measured, and the longest correction by it, as a share of the step. */
const CURVATURE_SHARE = 0.1;
const MOST_BENT = 0.5;
/** Below this share of the residuals' length still to be taken away, curvature is no longer worth an evaluation. */
const NEARLY_STRAIGHT = 1e-3;

/** A lower place, by a step damped ever more until one is found. */
export function descend(
  problem: Linearised,
  from: KnownPlace,
  residuals: Residuals,
  { space, stepTolerance, ...start }: { space: ParameterSpace; stepTolerance: number; damping: number },
): Descent {
  const { parameters, sumOfSquares } = from;
  const bends = reducible(problem) > NEARLY_STRAIGHT ** 2 * sumOfSquares;
  const allowed = changeAllowed(space, parameters);
  let { damping } = start;
  for (let rise = 2; ; rise *= 2) {
    const damped = dampedStep(problem, damping, allowed);
    const straight = clamped(space, sum(parameters, damped.step));
    const step = straight.map((value, j) => value - at(parameters, j));
    const change = relativeChange(space, parameters, step);
    if (change <= stepTolerance) return { ended: 'step' };

    const trial = (): KnownPlace | null => {
      if (change > LONGEST_STEP) return null;
      if (!bends) return placeAt(residuals, straight);
      const bend = bendOf(problem, damped, step, from, residuals);
      return bend === null ? null : placeAt(residuals, clamped(space, sum(straight, bend)));
    };
    const place = trial();
    if (place !== null) {
      const predicted = predictedReduction(problem, step);
      const gain = (sumOfSquares - place.sumOfSquares) / predicted;
      const flat = Math.abs(predicted) <= UNMEASURABLE * sumOfSquares;
      if (predicted > 0 && gain > WORTH_TAKING) {
        const eased = damping * Math.max(RELIEF, 1 - (2 * gain - 1) ** 3);
        return { ended: false, place, damping: Math.max(eased, LEAST_DAMPING), flat };
      }
      if (flat) return { ended: 'reduction' };
    }
    damping = Math.max(damping, RISING_DAMPING) * rise;
  }
}

/** The change nearest to a wanted one that keeps a parameter within its bounds. */
export const changeAllowed =
  (space: ParameterSpace, parameters: readonly number[]) =>
  (change: number, j: number): number => {
    const value = at(parameters, j);
    const place = clampedOne(space, value + change, j);
    return place === value + change ? change : place - value;
  };

const sum = (a: readonly number[], b: readonly number[]): number[] => a.map((value, i) => value + at(b, i));

/** The second-order correction of a step, or null where it cannot be had or would bend the step too far. */
function bendOf(
  problem: Linearised,
  damped: DampedStep,
  step: readonly number[],
  { parameters, residuals: here }: KnownPlace,
  residuals: Residuals,
): number[] | null {
  const share = CURVATURE_SHARE;
  const near = residualsAt(
    residuals,
    parameters.map((value, j) => value + share * at(step, j)),
  );
  if (near === null) return null;
  const along = times(problem.jacobian, step);
  const curvature = near.map((r, i) => (2 / share) * ((r - at(here, i)) / share - at(along, i)));
  const bend = acceleration(problem, damped, curvature).map((value) => value / 2);
  return scaledLength(problem, bend) > MOST_BENT * scaledLength(problem, step) ? null : bend;
}
