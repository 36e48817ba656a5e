import { staysUpright } from '../../arrow/lift/stays-upright.ts';
import { CLEAN, type Disturbance, rigidLaunch } from '../../flight/rigid-launch.ts';
import { flyRigid } from '../../flight/rigid-trajectory.ts';
import { fly } from '../../flight/trajectory.ts';
import { at } from '../../numerics/at.ts';
import { si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { NOCK_TRAVEL } from '../launch/nock-travel.ts';

/** What the launch of an arrow does to its height at one range. */
export interface LaunchLift {
  /**
   * m: how much higher it hits out of a clean launch, which does not turn with its path, than one that follows its path at
   * once.
   */
  readonly swing: number;
  /** m for every m/s at which the nock travels upwards as the string lets go. */
  readonly perNockTravel: number;
}

/**
 * What the launch does to the heights at each of `ranges` (m), by the rigid model: an arrow leaves the string not yet turning
 * with its falling path, so it rides nose-high through its first swing and is lifted until it has turned; little with a field
 * point, by inches with blades in front.
 *
 * @returns null for an arrow that flies as a point
 * @throws NumericalError when it falls short
 */
export function launchLift(rig: Rig, ranges: readonly number[]): readonly LaunchLift[] | null {
  const { conditions } = rig;
  const { balance } = conditions.arrow;
  if (!staysUpright(conditions.arrow)) return null;
  const launch = straightLaunch(rig);
  const rising = [...ranges].sort((a, b) => a - b);
  const heights = (start: Disturbance): ReadonlyMap<number, number> =>
    new Map(
      flyRigid(conditions, rigidLaunch(launch, start), rising).map(({ height }, i) => [
        at(rising, i),
        height,
      ]),
    );
  const travelling = (speed: number) => heights({ ...CLEAN, tailRisingRate: si(speed / balance) });
  const settled = new Map(fly(conditions, launch, rising).map(({ height }, i) => [at(rising, i), height]));
  const [clean, up, down] = [heights(CLEAN), travelling(NOCK_TRAVEL), travelling(-NOCK_TRAVEL)];
  return ranges.map((range) => ({
    swing: of(clean, range) - of(settled, range),
    perNockTravel: (of(up, range) - of(down, range)) / (2 * NOCK_TRAVEL),
  }));
}

function of(heights: ReadonlyMap<number, number>, range: number): number {
  const height = heights.get(range);
  if (height === undefined) throw new RangeError(`nothing was flown to ${range} m`);
  return height;
}
