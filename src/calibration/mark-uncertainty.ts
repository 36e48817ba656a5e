import { flyer } from '../flight/trajectory.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import type { Metres } from '../quantities/quantity.ts';
import { si } from '../quantities/quantity.ts';
import type { MarkTable } from '../sight/marks.ts';
import { pathsOver } from '../sight/pin-paths.ts';
import type { Rig } from '../sight/rig.ts';
import { impact, whereZeroed } from '../sight/zero.ts';
import { type Calibration, estimateOf } from './fit.ts';
import { PARAMETERS, type ParameterName, withParameters } from './parameters.ts';

/** How a mark moves with each parameter, and how sure it is. */
export interface MarkUncertainty {
  readonly range: Metres;
  /** Standard uncertainty of the mark as travel of the pin, m. */
  readonly travelSd: Metres;
  /** The same, in units of the sight's scale. */
  readonly readingSd: number;
  /** What it comes to on the target, m of height. */
  readonly onTargetSd: Metres;
  /** d(reading)/d(parameter), in the order of PARAMETERS. */
  readonly gradient: readonly number[];
  /** Height on the target for one unit of the scale, m. */
  readonly heightPerUnit: number;
}

/** The parameters that change a flight; the scale's two enter a reading in closed form. */
const FLOWN: readonly ParameterName[] = ['launch_speed', 'drag_scale', 'peep_height'];
/** Differences are taken over this share of the standard error: small against curvature, large against rounding. */
const STEP_SHARE = 0.02;
/** Step of the pin for how far it moves the hit at the zero range, m. */
const PIN_STEP = 1e-4;
/** Shared flights of a changed rig: enough for differences, see `pathsOver`. */
const FLIGHTS = 3;

/**
 * Standard uncertainty of every mark of a table, from the covariance of the calibration: gᵀ C g with g the mark's gradient.
 * Marks that nothing measured are uncertain by what their priors are.
 *
 * A parameter that raises the hit by ∂y lowers the pin that hits by ∂y over what a metre of pin moves the hit; the same at
 * the zero range, from which travel is counted.
 *
 * @param table of the calibration's own rig
 */
export function markUncertainty(calibration: Calibration, table: MarkTable): readonly MarkUncertainty[] {
  const { problem, values, covariance } = calibration;
  const scale = withParameters(problem.rig, values).scale;
  const perUnit = (scale?.direction ?? 1) * (scale?.travelPerUnit ?? 1);
  const slopes = travelSlopes(calibration, table);
  return table.marks.map(({ range, travel, heightPerTravel }, i) => {
    const heightPerUnit = heightPerTravel * Math.abs(perUnit);
    const byName: Partial<Record<ParameterName, number>> = {
      ...Object.fromEntries(FLOWN.map((name, k) => [name, (slopes[k]?.[i] ?? Number.NaN) / perUnit])),
      scale_ratio: -travel / (perUnit * values.scale_ratio),
      scale_offset: 1,
    };
    const gradient = PARAMETERS.map((name) => byName[name] ?? 0);
    const readingSd = Math.sqrt(quadraticForm(covariance, gradient));
    return {
      range,
      readingSd,
      travelSd: si(readingSd * Math.abs(perUnit)),
      onTargetSd: si(readingSd * Math.abs(heightPerUnit)),
      gradient,
      heightPerUnit,
    };
  });
}

/** d(travel)/d(parameter) of every mark, a list for each flown parameter. */
function travelSlopes(
  calibration: Calibration,
  { marks, zero, shared }: MarkTable,
): readonly (readonly number[])[] {
  const { problem, values } = calibration;
  const seen = (rig: Rig) => ({
    paths: pathsOver(rig, shared, FLIGHTS),
    atZero: (down: number) => {
      const zeroed = whereZeroed(rig);
      return impact(flyer(zeroed.conditions), zeroed, { ...zero, down }, rig.zeroRange).height;
    },
  });
  const here = seen(withParameters(problem.rig, values));
  const zeroHeight = here.atZero(zero.down);
  const perZeroPin = (here.atZero(zero.down + PIN_STEP) - zeroHeight) / PIN_STEP;
  return FLOWN.map((name) => {
    const step = STEP_SHARE * estimateOf(calibration, name).sd;
    const moved = seen(withParameters(problem.rig, { ...values, [name]: values[name] + step }));
    const zeroPin = -(moved.atZero(zero.down) - zeroHeight) / perZeroPin;
    return marks.map(({ range, travel, heightPerTravel }) => {
      const down = zero.down + travel;
      const raised = moved.paths.height(down, range) - here.paths.height(down, range);
      return (-raised / heightPerTravel - zeroPin) / step;
    });
  });
}
