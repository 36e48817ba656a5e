import { at } from '../numerics/at.ts';
import { forwardSolve } from '../numerics/cholesky.ts';
import type { Residuals } from '../numerics/difference-jacobian.ts';
import { type Converged, type LeastSquaresOptions, leastSquares } from '../numerics/least-squares.ts';
import { matrixColumn, type Rows } from '../numerics/linear-algebra.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import type { Rig } from '../sight/rig.ts';
import { pinAtZero } from '../sight/zero.ts';
import { type SharedErrors, sharedErrors } from './days.ts';
import { logEvidence, mixedCovariance, mixedVariance } from './evidence.ts';
import { FIT_NOT_CONVERGED } from './fit-not-converged.ts';
import { studentised, type WhitenedFit } from './judged-residuals.ts';
import type { DayPriors, Measurement } from './measurement.ts';
import {
  besideOf,
  namedValues,
  type ParameterName,
  type ParameterValues,
  type Prior,
  type Priors,
  parameterIn,
  parametersOf,
  priorOf,
  withParameters,
} from './parameters.ts';
import { observed, predict, WINDAGE } from './prediction.ts';
import { predictionJacobian } from './prediction-jacobian.ts';
import { estimates, type ParameterEstimate } from './verdict.ts';
import { scatterOf } from './widening.ts';

/** Everything a fit needs. `rig` holds the values the priors are about. */
export interface CalibrationProblem {
  readonly rig: Rig;
  readonly priors: Priors;
  readonly measurements: readonly Measurement[];
  readonly days: DayPriors;
  /** A second place where the factor on the drag may lie, as likely before the marks as that of `priors`. */
  readonly otherDrag?: Prior;
}

/** One measurement beside what the calibrated model says of it. */
export interface Residual {
  readonly measurement: Measurement;
  /** Observed less predicted: m of height on the target (high positive), m/s for a chronograph reading. */
  readonly residual: number;
  /** Residual over its own standard error, the measurement's pull on the fit allowed for. */
  readonly studentised: number;
}

export interface Calibration {
  readonly rig: Rig;
  readonly values: ParameterValues;
  /** The parameters that it changed, in the order of its lists: PARAMETERS, and further ones where they have priors. */
  readonly names: readonly ParameterName[];
  readonly parameters: readonly ParameterEstimate[];
  /** In the order of `names`, with `widening` applied. */
  readonly covariance: readonly (readonly number[])[];
  readonly correlations: readonly (readonly number[])[];
  readonly residuals: readonly Residual[];
  /** Weighted sum of squares of measurements and priors; as many as `measurements` are expected. */
  readonly chiSquared: number;
  /** Chance of a larger `chiSquared` if every stated uncertainty is right; 1 without measurements. */
  readonly chance: number;
  /** Factor on all standard errors because the marks scatter more than their groups explain; 1 when they do not. */
  readonly widening: number;
  readonly problem: CalibrationProblem;
  /** What was known before the marks of the values as they came out: with two places for the drag, about the one it came to. */
  readonly priors: Priors;
  /** Null where the drag has one place. */
  readonly dragPlace: DragPlace | null;
  readonly linear: LinearFit;
  /** Steps that the search for the minimum took. */
  readonly iterations: number;
  /** The fit that the sight was zeroed with, for another arrow or in other air; null where it is this one. */
  readonly elsewhere: Elsewhere | null;
}

/** A calibration that answers for another arrow or other air than the sight was zeroed with. */
interface Elsewhere {
  readonly home: Calibration;
  /** Of the values here in the order of PARAMETERS, then of those at home in the order of FLOWN. */
  readonly covariance: Rows;
}

/** Which of two places the drag came to. */
interface DragPlace {
  readonly isOther: boolean;
  /** Of the place it came to, after the marks. */
  readonly chance: number;
}

/** The fit taken as linear at its minimum, with what days have done. */
type LinearFit = SharedErrors & WhitenedFit;

/** The fit is done when a step changes no parameter by more than this share: the error left is its square. */
const STEP_TOLERANCE = 1e-4;
/** Or when the residuals could shrink by no more than this share: a ten-thousandth of a standard error or so. */
const GRADIENT_TOLERANCE = 1e-4;

/** Relative error of a flown height. */
const FLIGHT_PRECISION = 1e-8;

/** Ranges outside which no bow shoots: they keep a trial step of the fit from leaving physics. */
const LOWEST: Readonly<Record<ParameterName, number>> = {
  launch_speed: 15,
  drag_scale: 0.05,
  peep_height: 0.01,
  scale_ratio: 0.02,
  scale_offset: -1e6,
  speed_per_degree: -5,
  tape_ratio: 1e-3,
};
const HIGHEST: Readonly<Record<ParameterName, number>> = {
  launch_speed: 200,
  drag_scale: 10,
  peep_height: 0.4,
  scale_ratio: 50,
  scale_offset: 1e6,
  speed_per_degree: 5,
  tape_ratio: 1e3,
};

/**
 * Maximum a posteriori values of launch speed, drag, peep height and the sight's scale, from priors and measurements.
 *
 * Minimises r' V^-1 r + Σ((value − prior)/sd)², r what was observed less what is predicted. V holds each measurement's own
 * variance and, between measurements of one day, what that day did to all of them: a random effect, of which the parameters are
 * the mean over days. The covariance is the inverse of the normal matrix at the minimum, widened as the scatter of the marks asks
 * (widening.ts).
 *
 * @throws NumericalError when the minimum is not found
 */
export function calibrate(problem: CalibrationProblem): Calibration {
  const { priors, otherDrag } = problem;
  const first = fitFrom(problem, priors);
  if (otherDrag === undefined) return calibrationOf(problem, first, first.solution.covariance, priors, null);
  const second = fitFrom(problem, { ...priors, drag_scale: otherDrag });
  const chance = 1 / (1 + Math.exp(first.logEvidence - second.logEvidence));
  const isOther = chance > EVEN;
  const [found, other, share] = isOther ? [second, first, 1 - chance] : [first, second, chance];
  const mixed = mixedCovariance(found.solution, other.solution, share);
  const dragSd = Math.sqrt(mixedVariance(found.priors.drag_scale, other.priors.drag_scale, EVEN));
  const known = { ...found.priors, drag_scale: { value: found.priors.drag_scale.value, sd: dragSd } };
  return calibrationOf(problem, found, mixed, known, { isOther, chance: 1 - share });
}
const EVEN = 0.5;

interface FitFrom {
  readonly priors: Priors;
  readonly errors: SharedErrors;
  readonly solution: Converged;
  readonly logEvidence: number;
}

function fitFrom({ rig, measurements, days }: CalibrationProblem, priors: Priors): FitFrom {
  const names = parametersOf(priors);
  const prior = names.map((name) => priorOf(priors, name));
  const known = namedValues(
    prior.map(({ value }) => value),
    names,
  );
  const errors = sharedErrors(rig, measurements, days, besideOf(known));
  const seen = measurements.map(observed);
  const typical = prior.map(({ value, sd }) => Math.min(sd, Math.abs(value) || sd));
  const residuals: Residuals = (list) => {
    const values = namedValues(list, names);
    const predicted = predict(withParameters(rig, values), measurements, besideOf(values));
    const shot = forwardSolve(
      errors.factor,
      predicted.map((value, i) => at(seen, i) - value),
    );
    return [...shot, ...prior.map(({ value, sd }, j) => (value - at(list, j)) / sd)];
  };
  const jacobian = (list: readonly number[]): Rows => {
    const slopes = predictionJacobian(rig, list, names, typical, measurements);
    const columns = names.map((_, j) => forwardSolve(errors.factor, matrixColumn(slopes, j)));
    const shot = slopes.map((_, i) => columns.map((column) => -at(column, i)));
    return [...shot, ...prior.map(({ sd }, j) => names.map((_, k) => (j === k ? -1 / sd : 0)))];
  };
  const start = withParameters(rig, known);
  const solution = minimum({ names, prior, start, typical, residuals, jacobian });

  return { priors, errors, solution, logEvidence: logEvidence(solution, prior) };
}

/** @param unwidened covariance of the parameters: the fit's own, or with another place of the drag mixed in */
function calibrationOf(
  problem: CalibrationProblem,
  { errors, solution }: FitFrom,
  unwidened: Rows,
  priors: Priors,
  dragPlace: DragPlace | null,
): Calibration {
  const { rig, measurements } = problem;
  const count = measurements.length;
  const { chance, widening } = scatterOf(solution.sumOfSquares, count);
  const linear: LinearFit = {
    ...errors,
    jacobian: solution.jacobian.slice(0, count),
    residuals: solution.residuals.slice(0, count),
    covariance: solution.covariance,
  };
  const judged = studentised(linear);
  const covariance = unwidened.map((row) => row.map((value) => value * widening ** 2));
  const names = parametersOf(priors);
  const values = namedValues(solution.parameters, names);
  return {
    rig: calibratedRig(rig, values),
    values,
    names,
    parameters: estimates({ ...solution, covariance: unwidened }, priors, count, widening),
    covariance,
    correlations: correlationsOf(covariance),
    residuals: measurements.map((measurement, i) => ({
      measurement,
      residual: at(errors.factor, i).reduce((sum, value, k) => sum + value * at(linear.residuals, k), 0),
      studentised: at(judged, i),
    })),
    chiSquared: solution.sumOfSquares,
    chance,
    widening,
    problem,
    priors,
    dragPlace,
    linear,
    iterations: solution.iterations,
    elsewhere: null,
  };
}

interface Least {
  readonly names: readonly ParameterName[];
  readonly prior: readonly Prior[];
  /** The rig of the priors' values. */
  readonly start: Rig;
  /** Changes of the parameters that bend the residuals noticeably. */
  readonly typical: readonly number[];
  readonly residuals: Residuals;
  readonly jacobian: (parameters: readonly number[]) => Rows;
}

/** The least sum of squares from the priors' values on, with differences of the residuals themselves where it is not found. */
function minimum({ names, prior, start, typical, residuals, jacobian }: Least): Converged {
  const from = (derivatives: LeastSquaresOptions) =>
    leastSquares(
      residuals,
      prior.map(({ value }) => value),
      {
        lower: names.map((name) => LOWEST[name]),
        upper: names.map((name) => HIGHEST[name]),
        stepTolerance: STEP_TOLERANCE,
        gradientTolerance: GRADIENT_TOLERANCE,
        typical,
        ...derivatives,
      },
    );
  const quick = from({ jacobian });
  if (quick.outcome === 'converged') return quick;
  const careful = from({ differences: 'central', precision: FLIGHT_PRECISION });
  if (careful.outcome === 'converged') return careful;
  // A sight that cannot be zeroed is no fault of the marks.
  if (careful.reason === 'non-finite') pinAtZero(start, WINDAGE);
  throw new NumericalError(
    'not-converged',
    `the fit of the marks stopped before its minimum: ${careful.reason}`,
    { reason: FIT_NOT_CONVERGED },
  );
}

/** The calibrated rig keeps "no scale" where there was none. */
const calibratedRig = (rig: Rig, values: ParameterValues): Rig => {
  const fitted = withParameters(rig, values);
  return rig.scale === null ? { ...fitted, scale: null } : fitted;
};

const correlationsOf = (C: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  C.map((row, i) => row.map((value, j) => value / Math.sqrt(at(at(C, i), i) * at(at(C, j), j))));

/** Parameters that the fit pushed to the end of what is possible: no bow explains these marks. */
export const atBounds = ({ values, names }: Calibration): readonly ParameterName[] =>
  names.filter((name) => {
    const value = parameterIn(values, name);
    return value <= LOWEST[name] || value >= HIGHEST[name];
  });

/** The calibrated parameter of a name. */
export const estimateOf = (calibration: Calibration, name: ParameterName): ParameterEstimate => {
  const found = calibration.parameters.find((parameter) => parameter.name === name);
  if (found === undefined) throw new RangeError(`no parameter ${name}`);
  return found;
};
