import { chiSquaredSurvival } from '../numerics/distributions.ts';
import { leastSquares } from '../numerics/least-squares.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import type { Rig } from '../sight/rig.ts';
import { FIT_NOT_CONVERGED } from './fit-not-converged.ts';
import type { Measurement } from './measurement.ts';
import {
  namedValues,
  PARAMETERS,
  type ParameterName,
  type ParameterValues,
  type Priors,
  withParameters,
} from './parameters.ts';
import { observed, predict } from './prediction.ts';
import { estimates, type ParameterEstimate } from './verdict.ts';

/** Everything a fit needs. `rig` holds the values the priors are about. */
export interface CalibrationProblem {
  readonly rig: Rig;
  readonly priors: Priors;
  readonly measurements: readonly Measurement[];
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
  readonly parameters: readonly ParameterEstimate[];
  /** In the order of PARAMETERS, with `widening` applied. */
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
}

/** Below this chance the stated uncertainties are not believed and the errors are widened to what is seen. */
const BELIEVED_CHANCE = 0.05;

/** The fit is done when a step changes no parameter by more than this share: the error left is its square. */
const STEP_TOLERANCE = 1e-4;
/** Or when the residuals could shrink by no more than this share: a ten-thousandth of a standard error or so. */
const GRADIENT_TOLERANCE = 1e-4;

/** Relative error of a flown height; over steps of its root, a forward difference is as good as the priors' own roundness. */
const FLIGHT_PRECISION = 1e-8;

/** Ranges outside which no bow shoots: they keep a trial step of the fit from leaving physics. */
const LOWEST: ParameterValues = {
  launch_speed: 15,
  drag_scale: 0.05,
  peep_height: 0.01,
  scale_ratio: 0.02,
  scale_offset: -1e6,
};
const HIGHEST: ParameterValues = {
  launch_speed: 200,
  drag_scale: 10,
  peep_height: 0.4,
  scale_ratio: 50,
  scale_offset: 1e6,
};

/**
 * Maximum a posteriori values of launch speed, drag, peep height and the sight's scale, from priors and measurements.
 *
 * Minimises Σ((observed − predicted)/sd)² over the measurements plus Σ((value − prior)/sd)² over the parameters; the
 * covariance is the inverse of the normal matrix at the minimum, widened by √(χ²/n) (Birge's ratio) when the scatter of the
 * marks is larger than their stated uncertainties allow at the 5 % level.
 *
 * @throws NumericalError when the minimum is not found
 * @source Birge, Physical Review 40 (1932) 207, for the widening
 */
export function calibrate(problem: CalibrationProblem): Calibration {
  const { rig, priors, measurements } = problem;
  const prior = PARAMETERS.map((name) => priors[name]);
  const seen = measurements.map(observed);
  const sds = measurements.map(({ sd }): number => sd);

  const residualsOf = (list: readonly number[]): readonly number[] => {
    const predicted = predict(withParameters(rig, namedValues(list)), measurements);
    const shot = predicted.map((value, i) => ((seen[i] ?? 0) - value) / (sds[i] ?? 1));
    return [...shot, ...prior.map(({ value, sd }, j) => (value - (list[j] ?? value)) / sd)];
  };
  const solution = leastSquares(
    residualsOf,
    prior.map(({ value }) => value),
    {
      lower: PARAMETERS.map((name) => LOWEST[name]),
      upper: PARAMETERS.map((name) => HIGHEST[name]),
      stepTolerance: STEP_TOLERANCE,
      gradientTolerance: GRADIENT_TOLERANCE,
      differences: 'forward',
      precision: FLIGHT_PRECISION,
      typical: prior.map(({ value, sd }) => Math.min(sd, Math.abs(value) || sd)),
    },
  );
  if (solution.outcome !== 'converged')
    throw new NumericalError(
      'not-converged',
      `the fit of the marks stopped before its minimum: ${solution.reason}`,
      { reason: FIT_NOT_CONVERGED },
    );

  const count = measurements.length;
  const chance = count === 0 ? 1 : chiSquaredSurvival(solution.sumOfSquares, count);
  const widening = chance < BELIEVED_CHANCE ? Math.sqrt(solution.sumOfSquares / count) : 1;
  const covariance = solution.covariance.map((row) => row.map((value) => value * widening ** 2));
  const values = namedValues(solution.parameters);
  return {
    rig: calibratedRig(rig, values),
    values,
    parameters: estimates(solution, priors, count, widening),
    covariance,
    correlations: correlationsOf(covariance),
    residuals: measurements.map((measurement, i) => {
      const scaled = solution.residuals[i] ?? Number.NaN;
      const pull = quadraticForm(solution.covariance, solution.jacobian[i] ?? []);
      return {
        measurement,
        residual: scaled * measurement.sd,
        studentised: scaled / Math.sqrt(Math.max(1 - pull, SMALLEST_FREEDOM)),
      };
    }),
    chiSquared: solution.sumOfSquares,
    chance,
    widening,
    problem,
  };
}

/** A measurement that alone fixes a parameter has no residual to judge; this keeps 0/0 at 0. */
const SMALLEST_FREEDOM = 1e-9;

/** The calibrated rig keeps "no scale" where there was none. */
const calibratedRig = (rig: Rig, values: ParameterValues): Rig => {
  const fitted = withParameters(rig, values);
  return rig.scale === null ? { ...fitted, scale: null } : fitted;
};

/** gᵀ C g. */
export const quadraticForm = (C: readonly (readonly number[])[], g: readonly number[]): number =>
  C.reduce(
    (sum, row, i) => sum + (g[i] ?? 0) * row.reduce((inner, value, j) => inner + value * (g[j] ?? 0), 0),
    0,
  );

const correlationsOf = (C: readonly (readonly number[])[]): readonly (readonly number[])[] =>
  C.map((row, i) => row.map((value, j) => value / Math.sqrt((C[i]?.[i] ?? 1) * (C[j]?.[j] ?? 1))));

/** Parameters that the fit pushed to the end of what is possible: no bow explains these marks. */
export const atBounds = ({ values }: Calibration): readonly ParameterName[] =>
  PARAMETERS.filter((name) => values[name] <= LOWEST[name] || values[name] >= HIGHEST[name]);

/** The calibrated parameter of a name. */
export const estimateOf = (calibration: Calibration, name: ParameterName): ParameterEstimate => {
  const found = calibration.parameters.find((parameter) => parameter.name === name);
  if (found === undefined) throw new RangeError(`no parameter ${name}`);
  return found;
};
