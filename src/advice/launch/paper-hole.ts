import type { FlightConditions } from '../../flight/conditions.ts';
import { STATE } from '../../flight/frame.ts';
import { RIGID_STATE } from '../../flight/rigid-frame.ts';
import type { RigidLaunch } from '../../flight/rigid-launch.ts';
import { rigidFlyer } from '../../flight/rigid-trajectory.ts';
import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { ArrowEnds } from './arrow-ends.ts';

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

/** How often the place of the balance point is corrected for the lean of the shaft; each time a hundred times nearer. */
const ROUNDS = 2;

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
): readonly PaperHole[] {
  const { states } = rigidFlyer(conditions);
  const start = launch.position[0];
  /** Height and lateral position of the end at this distance ahead of the balance point, as it passes the range. */
  const passing = (range: number, ahead: number): readonly [number, number] => {
    let reach = ahead;
    let hole: readonly [number, number] = [Number.NaN, Number.NaN];
    for (let round = 0; round <= ROUNDS; round++) {
      const y = at(states(launch, [range - reach]), 0);
      const [up, right] = [at(y, RIGID_STATE.axisUp), at(y, RIGID_STATE.axisRight)];
      reach = ahead * Math.sqrt(1 - up * up - right * right);
      hole = [at(y, STATE.height) + ahead * up, at(y, STATE.lateral) + ahead * right];
    }
    return hole;
  };
  return ranges.map((range) => {
    if (!(range - ends.ahead > start))
      throw new DomainError('range of the paper (m)', range, `above ${(start + ends.ahead).toFixed(2)}`);
    const [pointHeight, pointLateral] = passing(range, ends.ahead);
    const [nockHeight, nockLateral] = passing(range, -ends.behind);
    const [high, right] = [nockHeight - pointHeight, nockLateral - pointLateral];
    return {
      range,
      nockHigh: si(high),
      nockRight: si(right),
      length: si(Math.sqrt(high * high + right * right)),
      clockwise: si(Math.atan2(right, high)),
    };
  });
}
