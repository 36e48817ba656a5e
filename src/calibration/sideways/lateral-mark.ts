import { DEGREE, MILE_PER_HOUR } from '../../quantities/exact.ts';
import type { Metres, Radians } from '../../quantities/quantity.ts';
import type { Day } from '../measurement.ts';
import type { LateralCause, LateralShot } from './lateral-model.ts';

/** Where a group's centre was sideways. */
export interface LateralMark extends LateralShot {
  /** Right positive, m. */
  readonly lateral: number;
  /** Standard uncertainty of the centre of the group, sideways. */
  readonly sd: Metres;
  /** Standard uncertainty of a cant held on purpose. */
  readonly cantSd: Radians;
  readonly day: Day;
}

export type LateralUnknown = LateralCause | 'tail_left' | 'turning';

/** What is known of the causes before a group is shot. */
export type LateralPriors = Readonly<
  Record<LateralUnknown, { readonly value: number; readonly sd: number }>
> & {
  /** Standard deviation of the wind across the line of sight on a day, about what the rig says of it, m/s. */
  readonly crosswindSd: number;
};

/**
 * A crosswind of a day of which nothing is written: 2.5 mph. Twice that is in the middle of Beaufort's light breeze, "wind felt
 * on face", 4 to 7 mph, which an archer may yet not write down. With 1.5 mph a steady wind of 6 mph was taken for a lean by 77
 * archers of 100.
 *
 * @source World Meteorological Organization, Manual on Codes, code table 1100, for the scale; two standard deviations for it
 *   are ours
 */
const UNTOLD_CROSSWIND_SD = 2.5 * MILE_PER_HOUR;
/** About a wind that is written down, still air among them: 1 mph, one of Beaufort's steps up or down from calm. */
export const TOLD_CROSSWIND_SD = MILE_PER_HOUR;

/** @source common practice, no source: a level set by a plumb line, an arrow under the eye, a start as a paper hole shows it */
export const USUAL_PRIORS: LateralPriors = {
  windage: { value: 0, sd: 0.1 }, // m/m: nothing is known of it
  offset: { value: 0, sd: 0.005 }, // m
  plumb: { value: 0, sd: DEGREE }, // a degree: sights are found that far off
  side_force: { value: 0, sd: 0.5 }, // of the ceiling: not measured on any arrow
  tail_left: { value: 0, sd: 1.5 * DEGREE },
  turning: { value: 0, sd: 0.012 }, // rad/m: a nock that leaves at 1 rad/s
  crosswindSd: UNTOLD_CROSSWIND_SD,
};
