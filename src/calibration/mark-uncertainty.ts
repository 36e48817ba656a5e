import { equalFlyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import type { Metres } from '../quantities/quantity.ts';
import { si } from '../quantities/quantity.ts';
import type { PinPosition } from '../sight/geometry.ts';
import type { MarkTable } from '../sight/marks.ts';
import { pathsOver } from '../sight/pin-paths.ts';
import type { Rig } from '../sight/rig.ts';
import { impact, pinAtZero, whereZeroed } from '../sight/zero.ts';
import { type Calibration, estimateOf } from './fit.ts';
import { FLOWN, type ParameterName, parameterIn, withParameters } from './parameters.ts';

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
 * the zero range, from which the reading is counted: with the arrow and in the air that the sight was zeroed with, whose own
 * errors hang together with those of the arrow and the air here.
 *
 * @param table of the calibration's own rig
 */
export function markUncertainty(calibration: Calibration, table: MarkTable): readonly MarkUncertainty[] {
  const { problem, values, names, covariance, elsewhere } = calibration;
  const scale = withParameters(problem.rig, values).scale;
  // Without a scale a unit of the reading is a metre of pin.
  const perUnit = scale === null ? 1 : scale.direction * scale.travelPerUnit;
  // A sight without numbers whose strip has pencil lines: how far the strip travels is fitted, the way to the peep with it.
  const onStrip = problem.rig.scale === null && names.includes('tape_ratio');
  const slopes = pinSlopes(calibration, table);
  const slopesOf = new Map<ParameterName, readonly number[]>(FLOWN.map((name, k) => [name, at(slopes, k)]));
  const zeroed = zeroSlopes(
    elsewhere === null ? calibration : elsewhere.home,
    elsewhere === null ? table.zero : null,
  );
  // What the sight reads counts from the pin that it was zeroed with.
  const lower = elsewhere === null ? 0 : table.zero.down - zeroed.zero.down;
  return table.marks.map(({ range, travel, heightPerTravel }, i) => {
    const heightPerUnit = heightPerTravel * Math.abs(perUnit);
    const here = names.map((name): number => {
      if (name === 'scale_ratio')
        return onStrip ? NO_PART : -(travel + lower) / (perUnit * values.scale_ratio);
      if (name === 'scale_offset') return 1;
      // A place on the strip, in metres of pin.
      if (name === 'tape_ratio') return onStrip ? travel / parameterIn(values, name) : NO_PART;
      // The marks are for the air in which the launch speed was measured.
      if (name === 'speed_per_degree') return NO_PART;
      return at(slopesOf.get(name) ?? [], i) / perUnit;
    });
    const atZero = zeroed.slopes.map((slope) => -slope / perUnit);
    const gradient = here.map((slope, j) => slope + (j < FLOWN.length ? at(atZero, j) : 0));
    const readingSd = Math.sqrt(
      elsewhere === null
        ? quadraticForm(covariance, gradient)
        : quadraticForm(elsewhere.covariance, [...here, ...atZero]),
    );
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

const stepOf = (calibration: Calibration, name: (typeof FLOWN)[number]): number =>
  STEP_SHARE * estimateOf(calibration, name).sd;

const moved = ({ problem, values }: Calibration, name: (typeof FLOWN)[number], step: number): Rig =>
  withParameters(problem.rig, { ...values, [name]: values[name] + step });

/** d(pin)/d(parameter) of every mark, a list for each flown parameter. */
function pinSlopes(
  calibration: Calibration,
  { marks, zero, shared }: MarkTable,
): readonly (readonly number[])[] {
  const here = pathsOver(withParameters(calibration.problem.rig, calibration.values), shared, FLIGHTS);
  return FLOWN.map((name) => {
    const step = stepOf(calibration, name);
    const paths = pathsOver(moved(calibration, name, step), shared, FLIGHTS);
    return marks.map(({ range, travel, heightPerTravel }) => {
      const down = zero.down + travel;
      return -(paths.height(down, range) - here.height(down, range)) / heightPerTravel / step;
    });
  });
}

/** d(pin)/d(parameter) at the zero range, for each flown parameter, and that pin. */
function zeroSlopes(
  calibration: Calibration,
  known: PinPosition | null,
): { readonly slopes: readonly number[]; readonly zero: PinPosition } {
  const rig = withParameters(calibration.problem.rig, calibration.values);
  const zero = known ?? pinAtZero(rig, null);
  const heightOf = (of: Rig, down: number): number => {
    const zeroed = whereZeroed(of);
    return impact(equalFlyer(zeroed.conditions), zeroed, { ...zero, down }, rig.zeroRange).height;
  };
  const height = heightOf(rig, zero.down);
  const perPin = (heightOf(rig, zero.down + PIN_STEP) - height) / PIN_STEP;
  return {
    zero,
    slopes: FLOWN.map((name) => {
      const step = stepOf(calibration, name);
      return -(heightOf(moved(calibration, name, step), zero.down) - height) / perPin / step;
    }),
  };
}
