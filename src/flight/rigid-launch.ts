import { add, cross, dot, rotate, scale, subtract, unit, type Vector3 } from '../numerics/vector.ts';
import { DomainError } from '../quantities/domain-error.ts';
import { type Radians, type RadiansPerSecond, si } from '../quantities/quantity.ts';
import type { Launch } from './launch.ts';
import { launchState } from './launch.ts';
import type { RigidVector } from './rigid-frame.ts';

/** A launch with the way the shaft stands and turns as it leaves the string. */
export interface RigidLaunch extends Launch {
  /** Unit vector along the shaft, towards the tip. */
  readonly axis: Vector3;
  /** Rate of change of `axis`, 1/s; square to it. */
  readonly turning: Vector3;
  readonly roll: Radians;
}

/** What is wrong with a launch; all zero is a clean one. */
export interface Disturbance {
  /** Tail up of the direction of flight, as a nock point set high leaves it. */
  readonly tailUp: Radians;
  /** Tail left of it. */
  readonly tailLeft: Radians;
  /** Rate at which the tail goes up and left about the balance point: the nock's travel across the shot. */
  readonly tailRisingRate: RadiansPerSecond;
  readonly tailLeftRate: RadiansPerSecond;
}

export const CLEAN: Disturbance = {
  tailUp: si(0),
  tailLeft: si(0),
  tailRisingRate: si(0),
  tailLeftRate: si(0),
};

/**
 * A launch whose shaft stands off the direction of flight, and turns, as the disturbance says. "Up" is square to the
 * direction of flight in the plane of it and the sight's up; "left" is square to both. The balance point starts as it would
 * clean: only the shaft is disturbed.
 *
 * @param roll of the arrow's reference mark, for arrows not alike all round
 * @throws DomainError for a start of 0.5 rad or more off the flight, far beyond what the linear laws of the air cover
 */
export function rigidLaunch(launch: Launch, disturbance = CLEAN, roll: Radians = si(0)): RigidLaunch {
  const { tailUp, tailLeft, tailRisingRate, tailLeftRate } = disturbance;
  const off = Math.sqrt(tailUp * tailUp + tailLeft * tailLeft);
  if (!(off < LARGEST_START))
    throw new DomainError('angle of the shaft to its flight (rad)', off, `below ${LARGEST_START}`);
  const ahead = unit(launch.velocity);
  const right = unit(cross(ahead, [0, 1, 0]));
  const up = cross(right, ahead);
  // The nose goes where the tail does not.
  const nose = subtract(scale(right, tailLeft), scale(up, tailUp));
  const axis = off === 0 ? ahead : rotate(ahead, unit(cross(ahead, nose)), off);
  const wanted = subtract(scale(right, tailLeftRate), scale(up, tailRisingRate));
  return { ...launch, axis, turning: add(wanted, scale(axis, -dot(axis, wanted))), roll };
}

const LARGEST_START = 0.5; // rad

/** The launch as the integrated components of `RIGID_STATE`. */
export function rigidLaunchState(launch: RigidLaunch, rolling: boolean): RigidVector {
  const [, axisUp, axisRight] = launch.axis;
  const [, turningUp, turningRight] = launch.turning;
  const state = [...launchState(launch), axisUp, axisRight, turningUp, turningRight] as const;
  return rolling ? [...state, launch.roll] : state;
}
