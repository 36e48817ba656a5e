import type { Attitude, FlyingArrow } from '../arrow/flying-arrow.ts';
import { referenceArea } from '../arrow/reference-area.ts';
import type { Air } from '../atmosphere/air.ts';
import { at, floatAt } from '../numerics/at.ts';
import { cubicHermite } from '../numerics/interpolate.ts';
import { CROSS_FLOW, type ShaftPoint, shaftPoints } from './cross-flow.ts';
import { wakeGivesBack, wakePlace } from './wake-passing.ts';

/**
 * Part of a radian of its swing in which one step of the integration takes an arrow: the rule errs by 1e-4 of the swing in a
 * whole one.
 */
const STEP = 0.4;
/** An arrow that hardly swings still spins up and slows: its steps, m of air. */
const LONGEST_STEP = 1.5;

/** Two small components square to the launch. */
export type Pair = readonly [up: number, right: number];

/** A swinging flight by metres of air flown. */
export type SwingPath = (way: number) => {
  /** From the straight line on which the flight began, m of air. */
  readonly offset: Pair;
  /** Of the flight's direction through the air, rad. */
  readonly turn: Pair;
  /** By how many metres the speed that the lift cost has left the arrow behind, at its first speed. */
  readonly late: number;
};

/**
 * Direction of the shaft (rad), its turning (rad/m), turn of the flight through the air (rad) and offset (m), each up and
 * right; then the share of the speed that the lift cost, and how far that has left the arrow behind (m).
 */
type State = Float64Array;
const [SHAFT, TURNING, TURN, OFFSET, SLOWED, LATE, SIZE] = [0, 2, 4, 6, 8, 9, 10] as const;

/** What a swinging flight starts from. */
export interface SwingStart {
  /** m/s. */
  readonly airspeed: number;
  /** The air across the shaft, rad; the shaft itself does not turn. */
  readonly incidence: Pair;
  /** Gravity over airspeed squared, rad/m; negative down. */
  readonly fall: number;
}

/**
 * How an arrow swings through the air from its launch on, in the equations of entry.ts. Integrated as far as it is asked for,
 * and kept.
 *
 * @checked unit: entry.test.ts
 */
export function swingPath(arrow: FlyingArrow, attitude: Attitude, air: Air, start: SwingStart): SwingPath {
  const rates = ratesOf(arrow, attitude, air, start);
  const P = (air.density * referenceArea(arrow.diameter)) / 2;
  const frequency = Math.sqrt((-P * attitude.firstMoment) / attitude.transverseInertia);
  const step = Math.min(STEP / frequency, LONGEST_STEP);
  const states: State[] = [new Float64Array(SIZE)];
  const stateAt = (index: number): State => {
    while (states.length <= index) {
      const last = states.length - 1;
      states.push(rungeKutta(rates, last * step, step, at(states, last)));
    }
    return at(states, index);
  };
  return (way) => {
    const index = Math.max(0, Math.floor(way / step));
    const [before, after] = [stateAt(index), stateAt(index + 1)];
    const t = way / step - index;
    const offset = (i: 0 | 1): number =>
      cubicHermite(
        step,
        t,
        floatAt(before, OFFSET + i),
        floatAt(before, TURN + i),
        floatAt(after, OFFSET + i),
        floatAt(after, TURN + i),
      );
    const straight = (i: number): number => floatAt(before, i) + t * (floatAt(after, i) - floatAt(before, i));
    return {
      offset: [offset(0), offset(1)],
      turn: [straight(TURN), straight(TURN + 1)],
      late: straight(LATE),
    };
  };
}

/** Rates of change of a state per metre of air, written into the last argument. */
type Rates = (way: number, state: State, rates: State) => void;

function ratesOf(
  { mass, diameter, drag, dragScale, sideForce }: FlyingArrow,
  attitude: Attitude,
  air: Air,
  { airspeed, incidence: [startUp, startRight], fall }: SwingStart,
): Rates {
  const { normalSlope, firstMoment, secondMoment, shaftMoments, transverseInertia: I } = attitude;
  const P = (air.density * referenceArea(diameter)) / 2;
  const CD = dragScale * drag.at((air.density * airspeed * diameter) / air.viscosity);
  const feed = (P * CD) / mass;
  const [rear, middle, front] = shaftPoints(shaftMoments, diameter, CROSS_FLOW);
  const [B0, B1, B2] = shaftMoments;
  const wake = wakeGivesBack(attitude.fins);
  const vanePlace = wakePlace(attitude.fins);
  const shaftSide = sideForce * air.density * ((Math.PI / 2) * diameter * diameter);
  const spinRate = air.density / attitude.spinUp;
  return (way, state, rates) => {
    const du = floatAt(state, TURNING);
    const dr = floatAt(state, TURNING + 1);
    const au = floatAt(state, TURN) + startUp - floatAt(state, SHAFT);
    const ar = floatAt(state, TURN + 1) + startRight - floatAt(state, SHAFT + 1);
    const flow = ({ place, weight }: ShaftPoint): number =>
      weight * Math.sqrt((au + place * du) ** 2 + (ar + place * dr) ** 2);
    const [a, b, c] = [flow(rear), flow(middle), flow(front)];
    const back = wake(au * au + ar * ar, 1);
    const n0 = normalSlope + back + a + b + c;
    const n1 = firstMoment + back * vanePlace + a * rear.place + b * middle.place + c * front.place;
    const n2 =
      secondMoment +
      back * vanePlace ** 2 +
      a * rear.place ** 2 +
      b * middle.place ** 2 +
      c * front.place ** 2;
    const spin = attitude.spinPerMetre * (1 - Math.exp(-spinRate * way));
    const side = shaftSide * spin;
    const turned = side * B2 + attitude.axialInertia * spin;
    const slower = Math.exp(feed * way + floatAt(state, SLOWED));
    rates[SHAFT] = du;
    rates[SHAFT + 1] = dr;
    rates[TURNING] = (-P * (n1 * au + n2 * du) - side * B1 * ar - turned * dr) / I + feed * du;
    rates[TURNING + 1] = (-P * (n1 * ar + n2 * dr) + side * B1 * au + turned * du) / I + feed * dr;
    rates[TURN] =
      (-P * ((n0 - CD) * au + n1 * du) - side * (B0 * ar + B1 * dr)) / mass + fall * slower * slower;
    rates[TURN + 1] = (-P * ((n0 - CD) * ar + n1 * dr) + side * (B0 * au + B1 * du)) / mass;
    rates[OFFSET] = floatAt(state, TURN);
    rates[OFFSET + 1] = floatAt(state, TURN + 1);
    rates[SLOWED] = (P / mass) * ((n0 - CD / 2) * (au * au + ar * ar) + n1 * (au * du + ar * dr));
    rates[LATE] = floatAt(state, SLOWED) * slower;
  };
}

/** One step by the classical rule of fourth order. */
function rungeKutta(rates: Rates, way: number, step: number, state: State): State {
  const next = Float64Array.from(state);
  const trial = Float64Array.from(state);
  const slope = new Float64Array(SIZE);
  for (const [place, share, onward] of STAGES) {
    rates(way + place * step, trial, slope);
    for (let i = 0; i < SIZE; i += 1) {
      next[i] = floatAt(next, i) + share * step * floatAt(slope, i);
      trial[i] = floatAt(state, i) + onward * step * floatAt(slope, i);
    }
  }
  return next;
}

/** Where in the step each slope is taken, its share of the step, and how far along it the next one is looked for. */
const STAGES = [
  [0, 1 / 6, 1 / 2],
  [1 / 2, 1 / 3, 1 / 2],
  [1 / 2, 1 / 3, 1],
  [1, 1 / 6, 0],
] as const;
