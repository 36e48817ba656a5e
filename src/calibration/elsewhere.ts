import { at } from '../numerics/at.ts';
import type { Rows } from '../numerics/linear-algebra.ts';
import type { Rig } from '../sight/rig.ts';
import { withSightOf } from '../sight/zero.ts';
import type { Calibration } from './fit.ts';
import { FLOWN, PARAMETERS, type ParameterValues } from './parameters.ts';
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
  const before = there.rig.scale;
  const { scale_offset: offset } = there.values;
  const covariance = PARAMETERS.map((_, i) => at(there.covariance, i).slice(0, PARAMETERS.length));
  return {
    ...home,
    rig,
    values: there.values,
    covariance,
    parameters: home.parameters.map(
      (parameter, i): ParameterEstimate => ({
        ...parameter,
        value: there.values[parameter.name],
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

/** The same bow and arrow in other air: what is off at home is off there by as much. */
export function calibrationInAir(home: Calibration, inAir: (rig: Rig) => Rig): Calibration {
  const { rig, values, covariance, problem } = home;
  const rows = [...PARAMETERS.keys(), ...FLOWN.keys()];
  return calibrationElsewhere(home, {
    rig: inAir(problem.rig),
    calibrated: inAir(rig),
    values,
    covariance: rows.map((i) => rows.map((j) => at(at(covariance, i), j))),
  });
}
