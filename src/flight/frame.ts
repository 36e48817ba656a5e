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
const EARTH_RATE = 7.292115e-5;

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
  const north = EARTH_RATE * Math.cos(latitude);
  const [forward, right] =
    azimuth === null ? [0, 0] : [north * Math.cos(azimuth), -north * Math.sin(azimuth)];
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

/** The integrated components in SI units, in the order of `STATE`; range is the independent variable. */
export type FlightVector = readonly [
  height: number,
  lateral: number,
  vx: number,
  vy: number,
  vz: number,
  spin: number,
  time: number,
];

export const STATE = { height: 0, lateral: 1, vx: 2, vy: 3, vz: 4, spin: 5, time: 6 } as const;
export const STATE_SIZE = 7;

/** Name the components of an integrated state. */
export const namedState = (
  range: number,
  [height, lateral, vx, vy, vz, spin, time]: FlightVector,
): FlightState => ({
  range: si(range),
  time: si(time),
  height: si(height),
  lateral: si(lateral),
  velocity: [vx, vy, vz],
  spin: si(spin),
});

/** Speed over the ground, m/s. */
export const speedOf = ({ velocity: [x, y, z] }: FlightState): MetresPerSecond =>
  si(Math.sqrt(x * x + y * y + z * z));
