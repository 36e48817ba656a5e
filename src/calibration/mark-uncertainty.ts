import { flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import type { Metres } from '../quantities/quantity.ts';
import { si } from '../quantities/quantity.ts';
import type { MarkTable } from '../sight/marks.ts';
import { pathsOver } from '../sight/pin-paths.ts';
import type { Rig } from '../sight/rig.ts';
import { impact, whereZeroed } from '../sight/zero.ts';
import { type Calibration, estimateOf } from './fit.ts';
import { type ParameterName, parametersOf, valueOf, withParameters } from './parameters.ts';

/** How a mark moves with each parameter, and how sure it is. */
export interface MarkUncertainty {
  readonly range: Metres;
  /** Standard uncertainty of the mark as travel of the pin, m. */
  readonly travelSd: Metres;
  /** The same, in units of the sight's scale. */
  readonly readingSd: number;
  /** What it comes to on the target, m of height. */
  readonly onTargetSd: Metres;
  /** d(reading)/d(parameter), in the order of the calibration's `names`. */
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
/** Of a parameter that moves no mark. */
const NO_PART = 0;
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
  // Without a scale a unit of the reading is a metre of pin.
  const perUnit = scale === null ? 1 : scale.direction * scale.travelPerUnit;
  const names = parametersOf(calibration.priors);
  // A sight without numbers whose strip has pencil lines: how far the strip travels is fitted, the way to the peep with it.
  const onStrip = problem.rig.scale === null && values.tape_ratio !== undefined;
  const slopes = travelSlopes(calibration, table);
  return table.marks.map(({ range, travel, heightPerTravel }, i) => {
    const heightPerUnit = heightPerTravel * Math.abs(perUnit);
    const slopeOf = (name: ParameterName): number => {
      if (name === 'scale_ratio') return onStrip ? NO_PART : -travel / (perUnit * values.scale_ratio);
      if (name === 'scale_offset') return 1;
      // A place on the strip, in metres of pin.
      if (name === 'tape_ratio') return onStrip ? travel / valueOf(values, name) : NO_PART;
      // The marks are for the air in which the launch speed was measured.
      if (name === 'speed_per_degree') return NO_PART;
      return at(at(slopes, FLOWN.indexOf(name)), i) / perUnit;
    };
    const gradient = names.map(slopeOf);
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
    const moved = seen(withParameters(problem.rig, { ...values, [name]: valueOf(values, name) + step }));
    const zeroPin = -(moved.atZero(zero.down) - zeroHeight) / perZeroPin;
    return marks.map(({ range, travel, heightPerTravel }) => {
      const down = zero.down + travel;
      const raised = moved.paths.height(down, range) - here.paths.height(down, range);
      return (-raised / heightPerTravel - zeroPin) / step;
    });
  });
}
