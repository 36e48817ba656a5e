import type { FlightConditions } from '../flight/conditions.ts';
import { type FlightState, speedOf } from '../flight/frame.ts';
import type { Launch } from '../flight/launch.ts';
import { launchLineHeight } from '../flight/launch.ts';
import { type Flyer, fly, flyer } from '../flight/trajectory.ts';
import { type Joules, type Metres, type MetresPerSecond, si } from '../quantities/quantity.ts';
import { launchThrough } from './geometry.ts';
import type { Rig } from './rig.ts';
import { pinAtZero, pinForHit } from './zero.ts';

/** A shot read at one range: where the arrow is, and what it brings along. */
export interface ShotRow extends FlightState {
  /** Over the ground. */
  readonly speed: MetresPerSecond;
  /** Below the line along which it was launched. */
  readonly drop: Metres;
  /** Kinetic, of its motion over the ground. */
  readonly energy: Joules;
  /** kg m/s */
  readonly momentum: number;
}

/**
 * Fly one launch and read it at the given ranges (m, rising, beyond the launch).
 *
 *   E = m v^2/2,  p = m v
 *
 * @throws NumericalError when the arrow does not reach the last range
 */
export const shotRows = (
  conditions: FlightConditions,
  launch: Launch,
  ranges: readonly number[],
): readonly ShotRow[] =>
  fly(conditions, launch, ranges).map((state) => {
    const speed = speedOf(state);
    const { mass } = conditions.arrow;
    return {
      ...state,
      speed,
      drop: si(launchLineHeight(launch, state.range) - state.height),
      energy: si((mass * speed ** 2) / 2),
      momentum: mass * speed,
    };
  });

/** No windage: the pin stands straight above the arrow, and whatever goes sideways is what spin, wind, cant and the Earth do. */
const NO_WINDAGE = 0; // m

/**
 * The launch of a bow pointed straight ahead and sighted in, in height alone, for one range (m); without one, with the mark of
 * the zero, as it was set on the slope of the zero.
 *
 * @throws NumericalError when the arrow cannot get there
 */
export function straightLaunch(
  rig: Rig,
  range: number | null = null,
  flight: Flyer = flyer(rig.conditions),
): Launch {
  const pin = range === null ? pinAtZero(rig, NO_WINDAGE, flight) : pinForHit(rig, range, NO_WINDAGE, flight);
  return launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed);
}
