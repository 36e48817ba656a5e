import { at } from '../numerics/at.ts';
import { forwardSolve } from '../numerics/cholesky.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import { type Tried, tried } from './agreement.ts';
import type { Calibration, CalibrationProblem } from './fit.ts';
import { inOtherUnit, type OneNumberTried } from './one-number.ts';
import { besideOf, parameterIn, priorOf, withParameters } from './parameters.ts';
import { observed, predict } from './prediction.ts';
import { isSightMark } from './sight-mark.ts';

/**
 * Chi-squared lower by this with all ranges in the other unit says that they may be. It was so of 34 of 36 slips with a known
 * travel per unit, and of none of 150 clean archers.
 */
const LOWER = 4;
/** A straight model tells the gain to about this; where it promises less nothing is fitted again. */
const STRAIGHT = 2;

/** Whether marks that agree would agree far better with their ranges in the other unit; null where they would not. */
export function otherUnitOf({ calibration, agreement }: Tried): OneNumberTried | null {
  // Where a unit of the scale is unknown, ranges in the other unit fit as well with another one.
  if (isUnitFree(calibration.problem) || agreement.chiSquared <= LOWER) return null;
  const [best] = inOtherUnit(calibration.problem)
    .filter(({ problem }) => agreement.chiSquared - straight(calibration, problem) > LOWER - STRAIGHT)
    .flatMap(({ cause, problem }): readonly OneNumberTried[] => {
      const found = tried(problem);
      return found === null ? [] : [{ ...found, cause }];
    })
    .toSorted((a, b) => a.agreement.chiSquared - b.agreement.chiSquared);
  return best !== undefined && agreement.chiSquared - best.agreement.chiSquared > LOWER ? best : null;
}

/** Whether nothing but the marks themselves tells what a number of any of them comes to on the sight. */
function isUnitFree({ priors, measurements }: CalibrationProblem): boolean {
  const isFree = { mark: priors.scale_ratio.yardstick, pencil: priors.tape_ratio?.yardstick };
  const marks = measurements.filter(isSightMark);
  return marks.length > 0 && marks.every(({ kind }) => isFree[kind] !== undefined);
}

/** Ranges in the other unit are ruled out where chi-squared would be higher by this: the likelihoods are then as 7 to 1. */
const HIGHER = 4;

/** Whether the marks leave open which unit their ranges were written in. */
export function isUnitOpen(calibration: Calibration): boolean {
  const { problem, chiSquared } = calibration;
  if (isUnitFree(problem)) return true;
  return inOtherUnit(problem).some((other) => straight(calibration, other.problem) < chiSquared + HIGHER);
}

/**
 * Chi-squared of another problem with as many measurements, were the model straight from this fit on.
 *
 *   χ² = ρ'ρ - (J'ρ)' C (J'ρ),   ρ the residuals of measurements and priors at this fit's values, J their derivatives
 */
function straight(
  { linear, values, names, priors, problem: own }: Calibration,
  other: CalibrationProblem,
): number {
  const moved = { ...withParameters(own.rig, values), zeroRange: other.rig.zeroRange };
  const predicted = predict(moved, other.measurements, besideOf(values));
  const shot = forwardSolve(
    linear.factor,
    other.measurements.map((measurement, i) => observed(measurement) - at(predicted, i)),
  );
  const prior = names.map((name) => {
    const { value, sd } = priorOf(priors, name);
    return (value - parameterIn(values, name)) / sd;
  });
  // Derivatives of the residuals, which is how the fit keeps them; of a prior's, -1/sd.
  const along = names.map((name, j) =>
    shot.reduce(
      (sum, value, i) => sum + value * at(at(linear.jacobian, i), j),
      -at(prior, j) / priorOf(priors, name).sd,
    ),
  );
  const squares = [...shot, ...prior].reduce((sum, value) => sum + value ** 2, 0);
  return squares - quadraticForm(linear.covariance, along);
}
