import { STATE } from '../../flight/frame.ts';
import { RIGID_STATE } from '../../flight/rigid-frame.ts';
import type { RigidLaunch } from '../../flight/rigid-launch.ts';
import type { RigidFlyer } from '../../flight/rigid-trajectory.ts';
import { at } from '../../numerics/at.ts';

/** Where an end of the arrow goes through a plane square to the line of sight, m. */
export interface Passing {
  readonly high: number;
  readonly right: number;
}

/** How often the place of the balance point is corrected for the lean of the shaft; each time a hundred times nearer. */
const ROUNDS = 2;

/** Height and lateral position of the end so far ahead of the balance point (m; behind negative), as it passes the range (m). */
export function endPassing(
  flyer: Pick<RigidFlyer, 'states'>,
  launch: RigidLaunch,
  range: number,
  ahead: number,
): Passing {
  let reach = ahead;
  let hole: Passing = { high: Number.NaN, right: Number.NaN };
  for (let round = 0; round <= ROUNDS; round++) {
    const y = at(flyer.states(launch, [range - reach]), 0);
    const [up, right] = [at(y, RIGID_STATE.axisUp), at(y, RIGID_STATE.axisRight)];
    reach = ahead * Math.sqrt(1 - up * up - right * right);
    hole = { high: at(y, STATE.height) + ahead * up, right: at(y, STATE.lateral) + ahead * right };
  }
  return hole;
}
