import { leanFor } from '../../../../src/advice/lean/lean.ts';
import { leanVerdict } from '../../../../src/advice/lean/lean-verdict.ts';
import { windFrom } from '../../../../src/atmosphere/wind.ts';
import { fitLateral } from '../../../../src/calibration/sideways/lateral-fit.ts';
import { type LateralPriors, USUAL_PRIORS } from '../../../../src/calibration/sideways/lateral-mark.ts';
import { at } from '../../../../src/numerics/at.ts';
import { randomStream } from '../../../../src/numerics/random.ts';
import { MILE_PER_HOUR } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { courseRanges, degrees, spinningRig } from '../../advice/invented-bow.ts';
import { yards } from '../../sight/invented-rig.ts';
import { groupsOf } from './lateral-marks.ts';

/** 0.03 in per yard of range. */
const SPREAD = 8.33e-4;

/** The bow in a wind across the line of sight, mph, to the right positive. */
export const inWind = (mph: number): Rig => ({
  ...spinningRig,
  conditions: {
    ...spinningRig.conditions,
    wind: windFrom(si(Math.abs(mph) * MILE_PER_HOUR), si((-Math.sign(mph) * Math.PI) / 2)),
  },
});

export interface WindTrial {
  /** yd, and of each group. */
  readonly ranges: readonly number[];
  readonly arrows: number;
  /** mph at a range, yd. */
  readonly wind: (range: number) => number;
  /** Degrees; drawn with a standard deviation of one when absent. */
  readonly lean?: number;
  readonly priors?: LateralPriors;
}

/** One archer who shot groups in a wind that the file says nothing of: what is advised, and how far off the lean is. */
export function windTrial({ ranges, arrows, wind, lean, priors = USUAL_PRIORS }: WindTrial, index: number) {
  const { normal } = randomStream(5, index);
  const plumb = degrees(lean ?? normal());
  const truth = { windage: 0.002 * normal(), offset: 0.003 * normal(), plumb, sideForce: 0.2 * normal() };
  const sdAt = (range: number) => (SPREAD * range) / Math.sqrt(arrows);
  const marks = [...new Set(ranges.map(wind))].flatMap((mph) => {
    const shots = ranges.filter((range) => wind(range) === mph).map((range) => ({ range: yards(range) }));
    return groupsOf(inWind(mph), truth, shots, sdAt).map((group) => ({
      ...group,
      lateral: group.lateral + group.sd * normal(),
    }));
  });
  const fit = fitLateral(spinningRig, marks, priors);
  const found = leanFor(spinningRig, fit, courseRanges);
  const verdict = leanVerdict(found, fit, courseRanges, SPREAD);
  const place = fit.unknowns.indexOf('plumb');
  const [value, sd] = [at(fit.values, place), Math.sqrt(at(at(fit.covariance, place), place))];
  return {
    fit,
    found,
    verdict,
    score: (value - plumb) / sd,
    wrong: verdict.worthDoing && Math.abs(value - plumb) > sd,
  };
}
