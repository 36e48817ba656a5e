import type { FlightConditions } from '../../flight/conditions.ts';
import type { Launch } from '../../flight/launch.ts';
import { rigidLaunch } from '../../flight/rigid-launch.ts';
import { flyRigid } from '../../flight/rigid-trajectory.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { type BadStart, badStarts, type StartName } from './bad-starts.ts';

/** One arrow as it leaves the bow. */
export interface Shot {
  readonly conditions: FlightConditions;
  readonly launch: Launch;
}

/** Where the broadhead hits, from where the field point hits out of the same start. */
interface BroadheadMiss {
  readonly range: Metres;
  readonly right: Metres;
  readonly high: Metres;
}

export interface BroadheadStart {
  readonly name: StartName;
  readonly misses: readonly BroadheadMiss[];
}

/**
 * Broadhead against field point from one bow held alike, by range, for a clean start and for bad ones.
 *
 * Clean, the two differ by drag and by what the shorter margin makes of the fall; out of a bad start the blades steer the
 * front while the vanes have not yet brought the tail in line.
 *
 * @param ranges rising, beyond the launch
 */
export function broadheadMisses(
  field: Shot,
  broadhead: Shot,
  start: BadStart,
  ranges: readonly Metres[],
): readonly BroadheadStart[] {
  return badStarts(start).map(([name, disturbance]) => {
    const [a, b] = [field, broadhead].map(({ conditions, launch }) =>
      flyRigid(conditions, rigidLaunch(launch, disturbance), ranges),
    );
    return {
      name,
      misses: ranges.map((range, i) => ({
        range,
        right: si((b?.[i]?.lateral ?? Number.NaN) - (a?.[i]?.lateral ?? Number.NaN)),
        high: si((b?.[i]?.height ?? Number.NaN) - (a?.[i]?.height ?? Number.NaN)),
      })),
    };
  });
}
