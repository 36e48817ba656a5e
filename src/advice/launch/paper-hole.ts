import type { FlightConditions } from '../../flight/conditions.ts';
import type { RigidLaunch } from '../../flight/rigid-launch.ts';
import { type RigidFlightOptions, rigidFlyer } from '../../flight/rigid-trajectory.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { ArrowEnds } from './arrow-ends.ts';
import { endPassing } from './end-passing.ts';

/** Where the nock goes through a sheet of paper, seen from the archer, from the hole of the point. */
export interface PaperHole {
  /** Of the sheet, which stands square to the line of sight. */
  readonly range: Metres;
  readonly nockRight: Metres;
  readonly nockHigh: Metres;
  /** Of the tear. */
  readonly length: Metres;
  /** Of the tear from the point's hole to the nock's, clockwise from straight up: a quarter turn is nock right. */
  readonly clockwise: Radians;
}

/**
 * The holes that point and nock of one flight leave in sheets of paper at the given ranges (m, rising).
 *
 * The point passes when the balance point is still short of the sheet, the nock when it is beyond: between the two the
 * shaft swings on, so the tear is not the shaft's angle when it hits. The paper holds nothing back, and the shaft does not
 * bend: near the bow a real tear shows the shaft's bending too.
 *
 * @throws DomainError for a sheet that the point is through before free flight begins
 */
export function paperHoles(
  conditions: FlightConditions,
  launch: RigidLaunch,
  ends: ArrowEnds,
  ranges: readonly Metres[],
  options: RigidFlightOptions = {},
): readonly PaperHole[] {
  const flyer = rigidFlyer(conditions, options);
  const start = launch.position[0];
  return ranges.map((range) => {
    if (!(range - ends.ahead > start))
      throw new DomainError('range of the paper (m)', range, `above ${(start + ends.ahead).toFixed(2)}`);
    const point = endPassing(flyer, launch, range, ends.ahead);
    const nock = endPassing(flyer, launch, range, -ends.behind);
    const [high, right] = [nock.high - point.high, nock.right - point.right];
    return {
      range,
      nockHigh: si(high),
      nockRight: si(right),
      length: si(Math.sqrt(high * high + right * right)),
      clockwise: si(Math.atan2(right, high)),
    };
  });
}
