import { DEGREE } from '../../quantities/exact.ts';
import type { Metres, Radians } from '../../quantities/quantity.ts';
import type { LateralCause, LateralShot } from './lateral-model.ts';

/** Where a group's centre was sideways. */
export interface LateralMark extends LateralShot {
  /** Right positive, m. */
  readonly lateral: number;
  /** Standard uncertainty of the centre of the group, sideways. */
  readonly sd: Metres;
  /** Standard uncertainty of a cant held on purpose. */
  readonly cantSd: Radians;
}

export type LateralUnknown = LateralCause | 'tail_left' | 'turning';

/** What is known of the causes before a group is shot. */
export type LateralPriors = Readonly<Record<LateralUnknown, { readonly value: number; readonly sd: number }>>;

/** @source common practice, no source: a level set by a plumb line, an arrow under the eye, a start as a paper hole shows it */
export const USUAL_PRIORS: LateralPriors = {
  windage: { value: 0, sd: 0.1 }, // m/m: nothing is known of it
  offset: { value: 0, sd: 0.005 }, // m
  plumb: { value: 0, sd: DEGREE }, // a degree: sights are found that far off
  side_force: { value: 0, sd: 0.5 }, // of the ceiling: not measured on any arrow
  tail_left: { value: 0, sd: 1.5 * DEGREE },
  turning: { value: 0, sd: 0.012 }, // rad/m: a nock that leaves at 1 rad/s
};
