import { flyer } from '../flight/trajectory.ts';
import type { Metres } from '../quantities/quantity.ts';
import { si } from '../quantities/quantity.ts';
import { pinPaths } from '../sight/pin-paths.ts';
import { pinForHit } from '../sight/zero.ts';
import { type Calibration, quadraticForm } from './fit.ts';
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

/**
 * Standard uncertainty of the mark of every range (m), from the covariance of the calibration: gᵀ C g with g the mark's
 * gradient. Marks that nothing measured are uncertain by what their priors are.
 */
export function markUncertainty(
  calibration: Calibration,
  ranges: readonly number[],
): readonly MarkUncertainty[] {
  const { problem, values, covariance, parameters } = calibration;
  const travels = (changed: Partial<Record<ParameterName, number>>): TravelTable =>
    travelTable(withParameters(problem.rig, { ...values, ...changed }), ranges);

  const centre = travels({});
  const scale = withParameters(problem.rig, values).scale;
  const perUnit = (scale?.direction ?? 1) * (scale?.travelPerUnit ?? 1);
  const slopes = FLOWN.map((name) => {
    const step = STEP_SHARE * (parameters.find((parameter) => parameter.name === name)?.sd ?? 0);
    const moved = travels({ [name]: values[name] + step }).travel;
    return ranges.map((_, i) => ((moved[i] ?? 0) - (centre.travel[i] ?? 0)) / step);
  });

  return ranges.map((range, i) => {
    const travel = centre.travel[i] ?? Number.NaN;
    const heightPerUnit = centre.heightPerTravel(i) * Math.abs(perUnit);
    const byName: Partial<Record<ParameterName, number>> = {
      ...Object.fromEntries(FLOWN.map((name, k) => [name, (slopes[k]?.[i] ?? 0) / perUnit])),
      scale_ratio: -travel / (perUnit * values.scale_ratio),
      scale_offset: 1,
    };
    const gradient = PARAMETERS.map((name) => byName[name] ?? 0);
    const readingSd = Math.sqrt(quadraticForm(covariance, gradient));
    return {
      range: si(range),
      readingSd,
      travelSd: si(readingSd * Math.abs(perUnit)),
      onTargetSd: si(readingSd * Math.abs(heightPerUnit)),
      gradient,
      heightPerUnit,
    };
  });
}

interface TravelTable {
  readonly travel: readonly number[];
  readonly heightPerTravel: (i: number) => number;
}

/** Pin travel from the zero range for every range, and what it moves on the target; nothing else of a mark. */
function travelTable(rig: Parameters<typeof pinPaths>[0], ranges: readonly number[]): TravelTable {
  const flight = flyer(rig.conditions);
  const zero = pinForHit(rig, rig.zeroRange, 0, flight);
  const { pins, paths } = pinPaths(rig, zero, ranges, flight);
  return {
    travel: pins.map((pin) => pin - zero.down),
    heightPerTravel: (i) => paths.heightPerTravel(pins[i] ?? Number.NaN, ranges[i] ?? Number.NaN),
  };
}
