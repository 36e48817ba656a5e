import type { FlightConditions } from '../flight/conditions.ts';
import { at } from '../numerics/at.ts';
import type { Rows } from '../numerics/linear-algebra.ts';
import type { Estimate } from '../quantities/estimate.ts';
import { type MetresPerSecond, si } from '../quantities/quantity.ts';
import type { Rig } from '../sight/rig.ts';
import { withSightOf } from '../sight/zero.ts';
import type { Calibration } from './fit.ts';
import { FLOWN, PARAMETERS, type ParameterValues, parameterIn } from './parameters.ts';
import type { ParameterEstimate } from './verdict.ts';

/** What is different where the sight is to be used. */
export interface There {
  /** As before the fit, with the scale of home. */
  readonly rig: Rig;
  /** With the values in it. */
  readonly calibrated: Rig;
  readonly values: ParameterValues;
  /** As `Elsewhere.covariance`. */
  readonly covariance: Rows;
}

/**
 * The calibration for another arrow or other air, on the sight as it stands: what was shot, and what it says of the bow, stays.
 *
 * @throws NumericalError when an arrow falls short of the zero range
 */
export function calibrationElsewhere(home: Calibration, there: There): Calibration {
  const rig = withSightOf(home.rig, there.calibrated);
  const { scale, zeroedWith } = rig;
  const before = home.problem.rig.scale;
  const { scale_offset: offset } = there.values;
  const covariance = PARAMETERS.map((_, i) => at(there.covariance, i).slice(0, PARAMETERS.length));
  return {
    ...home,
    rig,
    values: there.values,
    names: PARAMETERS,
    covariance,
    parameters: home.parameters.slice(0, PARAMETERS.length).map(
      (parameter, i): ParameterEstimate => ({
        ...parameter,
        value: parameterIn(there.values, parameter.name),
        sd: Math.sqrt(at(at(covariance, i), i)),
      }),
    ),
    problem: {
      ...home.problem,
      rig: {
        ...there.rig,
        zeroedWith,
        scale: scale === null || before === null ? before : { ...before, atZero: scale.atZero - offset },
      },
    },
    elsewhere: { home, covariance: there.covariance },
  };
}

/** The same bow and arrow where the sight was zeroed: what is off in the zero is off in the marks by as much. */
export function asAtHome({ rig, values, covariance, problem }: Calibration): There {
  const rows = [...PARAMETERS.keys(), ...FLOWN.keys()];
  return {
    rig: problem.rig,
    calibrated: rig,
    values,
    covariance: rows.map((i) => rows.map((j) => at(at(covariance, i), j))),
  };
}

/** What another place does to a shot. */
export interface Surroundings {
  readonly conditions: Pick<FlightConditions, 'air' | 'freeFall'>;
  /** How much faster the bow shoots there, by its temperature. */
  readonly faster: Estimate<MetresPerSecond>;
  /** Covariance of that error with that of each of PARAMETERS at home. */
  readonly shared: readonly number[];
}

/** The same in other surroundings; what the bow does there by its temperature adds its own error to the launch speed's. */
export function carriedTo({ conditions, faster, shared }: Surroundings, there: There): There {
  const inPlace = (rig: Rig): Rig => ({
    ...rig,
    conditions: { ...rig.conditions, ...conditions },
    launchSpeed: si(rig.launchSpeed + faster.value),
  });
  const speed = PARAMETERS.indexOf('launch_speed');
  // Of the values there in the order of PARAMETERS, then of those at home in the order of FLOWN, which begins it.
  const along = [...shared, ...shared.slice(0, FLOWN.length)];
  const added = (i: number, j: number): number =>
    (i === speed ? at(along, j) : 0) +
    (j === speed ? at(along, i) : 0) +
    (i === speed && j === speed ? faster.sd ** 2 : 0);
  return {
    rig: inPlace(there.rig),
    calibrated: inPlace(there.calibrated),
    values: { ...there.values, launch_speed: there.values.launch_speed + faster.value },
    covariance: there.covariance.map((row, i) => row.map((value, j) => value + added(i, j))),
  };
}
