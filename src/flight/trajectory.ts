import { at } from '../numerics/at.ts';
import { createEqualSteps } from '../numerics/equal-steps.ts';
import { createIntegrator, type Derivative, type Integrator } from '../numerics/ode.ts';
import { DomainError } from '../quantities/domain-error.ts';
import type { FlightConditions } from './conditions.ts';
import { driftingMotion } from './drifting.ts';
import { type Entry, entryInto } from './entry.ts';
import { type FlightState, type FlightVector, namedState, STATE, STATE_SIZE } from './frame.ts';
import { type Launch, launchState } from './launch.ts';

/**
 * Relative and absolute error per step, SI units. The extrapolation overshoots it: 100 m are right to 1e-6 m at worst, 1e-9
 * m mostly.
 */
const TOLERANCE = 1e-8;
/**
 * The spin may be wrong by this many tolerances: its error moves the arrow sideways by less than a thousandth of it, and held as
 * closely as the rest it alone would set the steps. A factor, so that a finer flight is finer in all its components.
 */
const SPIN_SLACK = 1000;
/** First trial step, m. The path bends over tens of metres; the solver's own choice would waste sixty evaluations. */
const FIRST_STEP = 8;
/** Stations of paths and stops of tables stand this close or closer, m; the path between two of them is one step. */
const LEAP = 11;

/**
 * The integrated components at each of the rising ranges, and the equations they obey.
 * One object serves one flight at a time and may be used again for the next.
 */
export interface Flyer {
  /**
   * The raw states of `STATE` at rising ranges, all beyond the launch, of an arrow that lies along its airspeed from the first
   * metre: what `derivative` describes.
   *
   * @throws NumericalError when the arrow does not get there
   */
  readonly states: (launch: Launch, ranges: readonly number[]) => FlightVector[];
  /** The same with the entry into the wind: where the arrow really goes. */
  readonly entered: (launch: Launch, ranges: readonly number[]) => FlightVector[];
  /** What sets the two apart; null in still air and for an arrow that flies as a point. */
  readonly entry: (launch: Launch) => Entry | null;
  /** The raw state at `to`, flown on from a state at `from`. */
  readonly onward: (from: number, state: FlightVector, to: number) => FlightVector;
  readonly derivative: Derivative<FlightVector>;
  /** Derivative calls so far. */
  readonly evaluations: () => number;
}

/** How flights are flown: `flyer`, or `equalFlyer` for what is only looked at or compared. */
export type FlyerFor = (conditions: FlightConditions) => Flyer;

/** Make the equations of motion for these conditions ready to fly any number of arrows, one after another. */
export function flyer(conditions: FlightConditions, tolerance = TOLERANCE): Flyer {
  const tolerances = new Array<number>(STATE_SIZE).fill(tolerance).with(STATE.spin, SPIN_SLACK * tolerance);
  const derivative = driftingMotion(conditions);
  const integrator = createIntegrator(derivative, STATE_SIZE, {
    relativeTolerance: tolerances,
    absoluteTolerance: tolerances,
    initialStep: FIRST_STEP,
    leap: LEAP,
  });
  return flyerBy(conditions, derivative, integrator);
}

/** Longest step of a flight in equal steps, m: a path bends over tens of metres. */
const EQUAL_STEP = 10;

/**
 * Flies in equal steps, for a third of the time or less. What a small change moves a hit's height by is right to a thousandth
 * of a per cent, as the errors of flights that are alike are alike too. A pin is right to far less than a printer shows, but
 * nothing makes a step shorter where an arrow needs that, so no mark that is told in numbers comes from here.
 *
 * @checked unit: equal-flights.test.ts, tape.test.ts
 */
export function equalFlyer(conditions: FlightConditions): Flyer {
  const { arrow, air } = conditions;
  // Steps longer than the way in which the spin settles would make it grow without end.
  const settling = arrow.attitude === null ? EQUAL_STEP : arrow.attitude.spinUp / air.density;
  const derivative = driftingMotion(conditions);
  const integrator = createEqualSteps(derivative, STATE_SIZE, Math.min(EQUAL_STEP, settling));
  return flyerBy(conditions, derivative, integrator);
}

function flyerBy(
  conditions: FlightConditions,
  derivative: Derivative<FlightVector>,
  integrator: Integrator<FlightVector>,
): Flyer {
  const states = (launch: Launch, ranges: readonly number[]): FlightVector[] => {
    let x = launch.position[0];
    let y = launchState(launch);
    return ranges.map((range) => {
      if (!(range >= x))
        throw new DomainError('range', range, `rising, and at least ${x} m, where free flight begins`, x);
      y = integrator.advance(x, y, range);
      x = range;
      return y;
    });
  };
  const entry = entryInto(conditions);
  return {
    derivative,
    evaluations: integrator.evaluations,
    onward: (from, state, to) => integrator.advance(from, state, to),
    states,
    entry,
    entered: (launch, ranges) => {
      const flown = states(launch, ranges);
      const into = entry(launch);
      return into === null ? flown : flown.map((state, i) => moved(state, into, at(ranges, i)));
    },
  };
}

/** A state at a range (m) with what the entry into the wind adds. */
function moved(state: FlightVector, entry: Entry, range: number): FlightVector {
  const [height, lateral, vx, vy, vz, spin, time] = state;
  const [up, right] = entry.offset(range);
  const [rising, drifting] = entry.velocity(range, vx);
  return [height + up, lateral + right, vx, vy + rising, vz + drifting, spin, time];
}

/**
 * Fly one arrow by the everyday model, its entry into the wind with it, and read it at the given ranges (m along the line of
 * sight, rising, beyond the launch).
 *
 * @throws NumericalError when the arrow does not reach the last range
 */
export const fly = (
  conditions: FlightConditions,
  launch: Launch,
  ranges: readonly number[],
): readonly FlightState[] =>
  flyer(conditions)
    .entered(launch, ranges)
    .map((state, i) => namedState(at(ranges, i), state));
