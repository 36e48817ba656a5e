import type { Launch } from '../flight/launch.ts';
import { launchThrough } from '../sight/geometry.ts';
import { pinAtZero } from '../sight/zero.ts';
import type { Session } from './session.ts';

/** Sighted in for the zero range with the bow pointed straight ahead: no windage, so that what goes sideways is the arrow's doing. */
export function straightLaunch({ calibration: { rig } }: Session): Launch {
  return launchThrough(rig.geometry, pinAtZero(rig, 0), rig.cant, rig.launchSpeed);
}
