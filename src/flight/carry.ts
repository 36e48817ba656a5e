import { cubicHermite } from '../numerics/interpolate.ts';
import { bracketedRoot } from '../numerics/root.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../quantities/quantity.ts';
import type { FlightConditions } from './conditions.ts';
import { SPINLESS } from './drifting.ts';
import { type FlightVector, STATE } from './frame.ts';
import { launchFromEye, launchState } from './launch.ts';
import { equalFlyer } from './trajectory.ts';

/** The farthest an arrow can come down, and the elevation that does it. */
export interface Carry {
  readonly distance: Metres;
  readonly elevation: Radians;
}

/**
 * Spacing of the places where the ground is looked for, m: between two of them a cubic has the path to a millimetre. Not longer,
 * since an arrow of much drag comes down so steeply that it never gets to a place so far beyond.
 */
const GROUND_STRIDE = 10;
/** The farthest shot of anything with drag lies about here, rad: without, at 0.785. */
const ELEVATION = { middle: 0.69, apart: 0.09 } as const;
const DISTANCE_TOLERANCE = 0.05; // m

/**
 * How far the arrow could carry over level ground: the longest distance over all elevations, in the air as given. A wind
 * that helps is counted; one that holds the arrow back is not to be relied on.
 */
export function carry(conditions: FlightConditions, speed: MetresPerSecond): Carry {
  const { wind, arrow } = conditions;
  // Spin turns an arrow aside and takes nothing of its distance, but to follow it takes three times as many steps.
  const attitude = arrow.attitude === null ? null : { ...arrow.attitude, ...SPINLESS };
  const level = {
    ...conditions,
    arrow: { ...arrow, attitude },
    slope: si<'rad'>(0),
    wind: { ...wind, tail: si<'m/s'>(Math.max(0, wind.tail)) },
  };
  const { onward } = equalFlyer(level);
  const aboveGround = (state: FlightVector): number => state[STATE.height] + level.eyeHeight;
  const riseOf = (state: FlightVector): number => state[STATE.vy] / state[STATE.vx];
  const distanceAt = (elevation: number): number => {
    let from = 0;
    let state = launchState(launchFromEye(speed, si(elevation)));
    let next = onward(from, state, from + GROUND_STRIDE);
    while (aboveGround(next) > 0) {
      [from, state] = [from + GROUND_STRIDE, next];
      next = onward(from, state, from + GROUND_STRIDE);
    }
    const [before, after] = [aboveGround(state), aboveGround(next)];
    const height = (share: number): number =>
      cubicHermite(GROUND_STRIDE, share, before, riseOf(state), after, riseOf(next));
    return (
      from + GROUND_STRIDE * bracketedRoot(height, 0, 1, { tolerance: DISTANCE_TOLERANCE / GROUND_STRIDE })
    );
  };
  // The distance is so nearly a parabola there, and so flat, that three shots tell the best elevation to 0.01 rad and the
  // distance to 0.02 %.
  const { middle, apart } = ELEVATION;
  const [lower, here, higher] = [distanceAt(middle - apart), distanceAt(middle), distanceAt(middle + apart)];
  const [slope, bend] = [(higher - lower) / 2, 2 * here - lower - higher];
  const off = slope / bend;
  return { distance: si(here + (slope * off) / 2), elevation: si(middle + apart * off) };
}
