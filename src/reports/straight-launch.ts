import type { Launch } from '../flight/launch.ts';
import type { OpenSetup } from '../setup/open.ts';
import { launchThrough } from '../sight/geometry.ts';
import { pinForHit } from '../sight/zero.ts';

/** Sighted in for the zero range with the bow pointed straight ahead: no windage, so that what goes sideways is the arrow's doing. */
export function straightLaunch({ calibration: { rig } }: OpenSetup): Launch {
  return launchThrough(rig.geometry, pinForHit(rig, rig.zeroRange, 0), rig.cant, rig.launchSpeed);
}
