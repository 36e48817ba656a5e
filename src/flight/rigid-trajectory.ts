import { at } from '../numerics/at.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import { createIntegrator, type Derivative } from '../numerics/ode.ts';
import { DomainError } from '../quantities/domain-error.ts';
import type { FlightConditions } from './conditions.ts';
import {
  namedRigidState,
  RIGID_STATE,
  RIGID_STATE_SIZE,
  type RigidState,
  type RigidVector,
  ROLLING_STATE_SIZE,
} from './rigid-frame.ts';
import { type RigidLaunch, rigidLaunchState } from './rigid-launch.ts';
import { type RigidOptions, rigidMotion } from './rigid-motion.ts';

export interface RigidFlightOptions extends RigidOptions {
  /** Relative and absolute error per step, SI units. */
  readonly tolerance?: number;
}

/**
 * With the slack and the steps below it keeps a flight to 100 yd within 0.1 mm of the exact solution for starts a degree or two
 * off, within 1 mm for the wildest; where the cross-flow passes 0 it has kinks that cost the solver its high order.
 */
const TOLERANCE = 2e-5;
/**
 * By how many tolerances each component of RIGID_STATE may be wrong. A swing turns by some 30 rad/s for each rad, so that a
 * turning held as closely as the direction would be held thirty times closer; drift and the turn of the swing's plane need the
 * spin to a thousandth; and velocities are larger than what comes of their errors. Factors, so that a finer flight is finer in
 * all its components.
 */
const SLACK = [
  ...[1, 1], // place
  ...[3, 3, 3], // velocity
  ...[50, 1], // spin, time
  ...[1, 1, 50, 50], // direction and its turning
  1, // roll
];
/**
 * Longest and first step, m: a seventh of a common swing. In longer ones a kink of the cross-flow can pass unseen, and shorter
 * ones only cost more.
 */
const STEP = 3;

/** Square of the part of the axis across the line of sight beyond which the laws have long ceased to hold: 64 degrees. */
const FARTHEST_ACROSS = 0.8;

/** Flies one rigid arrow at a time, and may be used again for the next. */
export interface RigidFlyer {
  /**
   * The raw states of `RIGID_STATE` at rising ranges, all beyond the launch.
   *
   * @throws NumericalError when the arrow does not get there
   */
  readonly states: (launch: RigidLaunch, ranges: readonly number[]) => RigidVector[];
  readonly derivative: Derivative<RigidVector>;
  /** Derivative calls so far. */
  readonly evaluations: () => number;
}

/** Make the rigid equations of motion for these conditions ready to fly any number of launches, one after another. */
export function rigidFlyer(conditions: FlightConditions, options: RigidFlightOptions = {}): RigidFlyer {
  const { asymmetry = null, bladesStand = false, tolerance = TOLERANCE } = options;
  const rolling = asymmetry !== null || bladesStand;
  const derivative = rigidMotion(conditions, options);
  const size = rolling ? ROLLING_STATE_SIZE : RIGID_STATE_SIZE;
  const tolerances = SLACK.slice(0, size).map((slack) => slack * tolerance);
  const integrator = createIntegrator(derivative, size, {
    relativeTolerance: tolerances,
    absoluteTolerance: tolerances,
    initialStep: STEP,
    longestStep: STEP,
    leap: STEP,
  });
  return {
    derivative,
    evaluations: integrator.evaluations,
    states: (launch, ranges) => {
      let x = launch.position[0];
      let y = rigidLaunchState(launch, rolling);
      return ranges.map((range) => {
        if (!(range >= x))
          throw new DomainError('range', range, `rising, and at least ${x} m, where free flight begins`, x);
        y = integrator.advance(x, y, range);
        x = range;
        const [up, right] = [y[RIGID_STATE.axisUp], y[RIGID_STATE.axisRight]];
        if (!(up * up + right * right < FARTHEST_ACROSS))
          throw new NumericalError('non-finite', `the arrow stands across its flight at ${x} m`, x);
        return y;
      });
    },
  };
}

/**
 * Fly one arrow as a rigid body and read it at the given ranges (m along the line of sight, rising, beyond the launch).
 *
 * @throws NumericalError when the arrow does not reach the last range
 */
export const flyRigid = (
  conditions: FlightConditions,
  launch: RigidLaunch,
  ranges: readonly number[],
  options: RigidFlightOptions = {},
): readonly RigidState[] =>
  rigidFlyer(conditions, options)
    .states(launch, ranges)
    .map((state, i) => namedRigidState(at(ranges, i), state));
