import { bracketedRoot, minimumOf } from '../numerics/root.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../quantities/quantity.ts';
import type { FlightConditions } from './conditions.ts';
import { type FlightVector, STATE } from './frame.ts';
import { launchFromEye, launchState } from './launch.ts';
import { flyer } from './trajectory.ts';

/** The farthest an arrow can come down, and the elevation that does it. */
export interface Carry {
  readonly distance: Metres;
  readonly elevation: Radians;
}

/** Spacing of the places where the ground is looked for, m. */
const GROUND_STRIDE = 40;
/** Elevations between which the farthest shot of anything with drag lies. */
const ELEVATIONS = { lo: 0.55, hi: 0.8 } as const; // rad
/** The distance is flat at its maximum: an elevation this near to the best costs under 0.1 % of it. */
const ELEVATION_TOLERANCE = 0.02; // rad
const DISTANCE_TOLERANCE = 0.05; // m

/**
 * How far the arrow could carry over level ground: the longest distance over all elevations, in the air as given. A wind
 * that helps is counted; one that holds the arrow back is not to be relied on.
 */
export function carry(conditions: FlightConditions, speed: MetresPerSecond): Carry {
  const { wind } = conditions;
  const level = {
    ...conditions,
    slope: si<'rad'>(0),
    wind: { ...wind, tail: si<'m/s'>(Math.max(0, wind.tail)) },
  };
  const { onward } = flyer(level);
  const aboveGround = (state: FlightVector): number => state[STATE.height] + level.eyeHeight;
  const distanceAt = (elevation: number): number => {
    let from = 0;
    let state = launchState(launchFromEye(speed, si(elevation)));
    let next = onward(from, state, from + GROUND_STRIDE);
    while (aboveGround(next) > 0) {
      [from, state] = [from + GROUND_STRIDE, next];
      next = onward(from, state, from + GROUND_STRIDE);
    }
    const height = (range: number): number => aboveGround(onward(from, state, range));
    return bracketedRoot(height, from, from + GROUND_STRIDE, { tolerance: DISTANCE_TOLERANCE });
  };
  const elevation = minimumOf((angle) => -distanceAt(angle), ELEVATIONS.lo, ELEVATIONS.hi, {
    tolerance: ELEVATION_TOLERANCE,
  });
  return { distance: si(distanceAt(elevation)), elevation: si(elevation) };
}
