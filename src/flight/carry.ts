import { bracketedRoot, minimumOf } from '../numerics/root.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../quantities/quantity.ts';
import type { FlightConditions } from './conditions.ts';
import { STATE } from './frame.ts';
import { launchFromEye } from './launch.ts';
import { flyer } from './trajectory.ts';

/** The farthest an arrow can come down, and the elevation that does it. */
export interface Carry {
  readonly distance: Metres;
  readonly elevation: Radians;
}

/** Spacing of the places where the ground is looked for, m. */
const STRIDE = 10;
/** Elevations between which the farthest shot of anything with drag lies. */
const ELEVATIONS = { lo: 0.35, hi: 0.8 } as const; // rad
/** The distance is flat at its maximum: this finds it to a centimetre. */
const ELEVATION_TOLERANCE = 1e-3; // rad

/** How far the arrow could carry over level ground: the longest distance over all elevations, wind and air as given. */
export function carry(conditions: FlightConditions, speed: MetresPerSecond): Carry {
  const level = { ...conditions, slope: si<'rad'>(0) };
  const flight = flyer(level);
  const distanceAt = (elevation: number): number => {
    const launch = launchFromEye(speed, si(elevation));
    const height = (range: number): number =>
      (flight.states(launch, [range])[0]?.[STATE.height] ?? Number.NaN) + level.eyeHeight;
    let near = STRIDE;
    while (height(near + STRIDE) > 0) near += STRIDE;
    return bracketedRoot(height, near, near + STRIDE, { tolerance: 0.01 });
  };
  const elevation = minimumOf((angle) => -distanceAt(angle), ELEVATIONS.lo, ELEVATIONS.hi, {
    tolerance: ELEVATION_TOLERANCE,
  });
  return { distance: si(distanceAt(elevation)), elevation: si(elevation) };
}
