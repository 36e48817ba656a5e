import { flyPath } from '../../flight/path.ts';
import type { Flyer } from '../../flight/trajectory.ts';
import { bracketedRoot, minimumOf } from '../../numerics/root.ts';
import { launchThrough, type PinPosition } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';

/** A range is found to this, m: on the target it is below a millionth of a metre. */
const FOUND = 1e-5;
/** The top of a path is flat: this finds it well enough to tell on which side of the line of sight it lies. */
const TOP_FOUND = 1e-3;
/** A path this much longer is flown when the arrow is still above the line of sight at the end of the last. */
const FURTHER = 1.5;

/**
 * The range whose mark is this pin: where the falling part of the path crosses the line of sight, m.
 *
 * @param guess about where, m; only time is lost by a bad one
 * @returns null for a pin above every mark: its path stays below the line of sight
 */
export function rangeOfPin(rig: Rig, flight: Flyer, pin: PinPosition, guess: number): number | null {
  const launch = launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed);
  let end = guess * FURTHER;
  let path = flyPath(flight, launch, end);
  while (path.height(end) >= 0) {
    end *= FURTHER;
    path = flyPath(flight, launch, end);
  }
  const top = minimumOf((x) => -path.height(x), path.start, end, { tolerance: TOP_FOUND });
  return path.height(top) > 0 ? bracketedRoot(path.height, top, end, { tolerance: FOUND }) : null;
}
