import type { Vector3 } from '../numerics/vector.ts';
import {
  type Metres,
  type MetresPerSecond,
  type Radians,
  type RadiansPerSecond,
  si,
} from '../quantities/quantity.ts';
import type { FlightVector } from './frame.ts';

/** The balance point as it leaves the string, in the line-of-sight frame. */
export interface Launch {
  readonly position: Vector3;
  readonly velocity: Vector3;
  readonly spin: RadiansPerSecond;
}

/** A launch from the eye itself at an angle above the line of sight: what closed forms and published tables use. */
export const launchFromEye = (speed: MetresPerSecond, angle: Radians): Launch => ({
  position: [0, 0, 0],
  velocity: [speed * Math.cos(angle), speed * Math.sin(angle), 0],
  spin: si(0),
});

/** The launch as the integrated components of `STATE`. */
export const launchState = ({ position: [, height, lateral], velocity, spin }: Launch): FlightVector => [
  height,
  lateral,
  ...velocity,
  spin,
  0, // s
];

/** Height of the launch line at a range: the straight line along the launch velocity. */
export const launchLineHeight = ({ position, velocity }: Launch, range: number): Metres =>
  si(position[1] + ((range - position[0]) * velocity[1]) / velocity[0]);
