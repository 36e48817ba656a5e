import type { Vector3 } from '../numerics/vector.ts';
import type { MetresPerSecond, Radians, RadiansPerSecond, Seconds } from '../quantities/quantity.ts';
import { type Metres, si } from '../quantities/quantity.ts';

/**
 * The axes and signs of everything that flies. Every other file takes them from here.
 *
 * Line-of-sight frame: origin at the eye; x along the line of sight to the target; y square to it in the vertical
 * plane, up; z to the archer's right (x, y, z are right-handed). A line of sight uphill has a positive slope.
 * Spin is positive clockwise seen from behind the archer; a wind is the velocity of the air.
 */

/** Rotation of the Earth, rad/s. @source IERS Conventions (2010), table 1.1, nominal mean angular velocity. */
export const EARTH_RATE = 7.292115e-5;

/** Gravity in the line-of-sight frame: g(−sin slope, −cos slope, 0), m/s². */
export const gravity = ({
  slope,
  freeFall,
}: {
  readonly slope: Radians;
  readonly freeFall: number;
}): Vector3 => [-freeFall * Math.sin(slope), -freeFall * Math.cos(slope), 0];

/** Where the archer stands on the Earth; `azimuth` is the bearing of the target from north, clockwise. */
export interface EarthPlace {
  readonly latitude: Radians;
  readonly azimuth: Radians | null;
}

/**
 * The Earth's rotation in the line-of-sight frame, rad/s. Without an azimuth only the part about the vertical is
 * given, which is what remains of the deflection on average over all bearings.
 */
export function earthRotation({ latitude, azimuth }: EarthPlace, slope: Radians): Vector3 {
  const up = EARTH_RATE * Math.sin(latitude);
  const north = azimuth === null ? 0 : EARTH_RATE * Math.cos(latitude);
  const forward = north * Math.cos(azimuth ?? 0);
  const right = -north * Math.sin(azimuth ?? 0);
  const [c, s] = [Math.cos(slope), Math.sin(slope)];
  return [forward * c + up * s, up * c - forward * s, right];
}

/** The arrow's balance point at one range along the line of sight. */
export interface FlightState {
  readonly range: Metres;
  readonly time: Seconds;
  /** Above the line of sight. */
  readonly height: Metres;
  /** Right of the line of sight. */
  readonly lateral: Metres;
  readonly velocity: Vector3;
  readonly spin: RadiansPerSecond;
}

/** Order of the integrated components; range is the independent variable. */
export const STATE = { height: 0, lateral: 1, vx: 2, vy: 3, vz: 4, spin: 5, time: 6 } as const;
export const STATE_SIZE = 7;

const component = (y: readonly number[], i: number): number => {
  const value = y[i];
  if (value === undefined)
    throw new RangeError(`a flight state has ${STATE_SIZE} components, not ${y.length}`);
  return value;
};

/** Name the components of an integrated state. */
export const namedState = (range: number, y: readonly number[]): FlightState => ({
  range: si(range),
  time: si(component(y, STATE.time)),
  height: si(component(y, STATE.height)),
  lateral: si(component(y, STATE.lateral)),
  velocity: [component(y, STATE.vx), component(y, STATE.vy), component(y, STATE.vz)],
  spin: si(component(y, STATE.spin)),
});

/** Speed over the ground, m/s. */
export const speedOf = ({ velocity: [x, y, z] }: FlightState): MetresPerSecond =>
  si(Math.sqrt(x * x + y * y + z * z));
