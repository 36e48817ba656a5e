import type { Vector3 } from '../numerics/vector.ts';
import { type Radians, si } from '../quantities/quantity.ts';
import { type FlightState, type FlightVector, namedState, STATE, STATE_SIZE } from './frame.ts';

/**
 * Order of the integrated components of the rigid arrow: first those of the everyday model, with the balance point in the place
 * of the point mass, then the shaft. Axes and signs are those of frame.ts.
 *
 * The shaft's direction is a unit vector e towards the tip, given by its components up and right; the third follows,
 * because an arrow in flight never points sideways of its range. Its rate de/dt is square to e, so two components suffice
 * for it too. The spin turns nothing here: it is a number beside the direction, and the roll it adds up to is carried only
 * for arrows that are not alike all round (`roll`, the last component, absent otherwise).
 */
export type RigidVector = readonly [
  ...everyday: FlightVector,
  axisUp: number,
  axisRight: number,
  turningUp: number,
  turningRight: number,
  ...roll: readonly number[],
];

export const RIGID_STATE = {
  ...STATE,
  axisUp: 7,
  axisRight: 8,
  turningUp: 9,
  turningRight: 10,
  roll: 11,
} as const;

/** Components of an arrow alike all round, and of one that is not. */
export const RIGID_STATE_SIZE = STATE_SIZE + 4;
export const ROLLING_STATE_SIZE = RIGID_STATE_SIZE + 1;

/** The balance point, and how the shaft stands and turns. */
export interface RigidState extends FlightState {
  /** Unit vector along the shaft, towards the tip. */
  readonly axis: Vector3;
  /** Rate of change of `axis`, 1/s; square to it. */
  readonly turning: Vector3;
  /** About the shaft, 0 with the reference mark up; clockwise from behind. 0 for an arrow alike all round. */
  readonly roll: Radians;
}

/** An arrow alike all round looks the same at any roll; by convention it flies at this one, rad. */
const UNTURNED = 0;

/** Name the components of an integrated state. */
export function namedRigidState(range: number, y: RigidVector): RigidState {
  const [height, lateral, vx, vy, vz, spin, time, up, right, turningUp, turningRight, roll = UNTURNED] = y;
  const forward = Math.sqrt(1 - up * up - right * right);
  return {
    ...namedState(range, [height, lateral, vx, vy, vz, spin, time]),
    axis: [forward, up, right],
    turning: [-(up * turningUp + right * turningRight) / forward, turningUp, turningRight],
    roll: si(roll),
  };
}
