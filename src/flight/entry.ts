import type { Attitude } from '../arrow/flying-arrow.ts';
import { add, cross, dot, length, scale, subtract, unit, type Vector3 } from '../numerics/vector.ts';
import type { FlightConditions } from './conditions.ts';
import { gravity } from './frame.ts';
import type { Launch } from './launch.ts';
import { airAt } from './moving-air.ts';
import { type Pair, type SwingPath, type SwingStart, swingPath } from './swing-path.ts';

/** Where an arrow stands off the path of one that met the wind head on from the start. */
export interface Entry {
  /** m, up and right. */
  readonly offset: (range: number) => Pair;
  /** Of the velocity at a forward speed (m/s), m/s, up and right. */
  readonly velocity: (range: number, forwardSpeed: number) => Pair;
}

/** Angle of the air across an arrow below which there is no entry: a millionth of a micrometre at 100 m. */
const STILL = 1e-12; // rad

/**
 * How an arrow enters a wind that blows across it.
 *
 * It leaves the bow along its velocity, so the air meets it at an angle of about W/v across the shaft. It turns into the wind
 * within a few swings, and the lift until then pushes it downwind: what that leaves is a straight line. The everyday model
 * flies an arrow that lies along its airspeed from the first metre; this is what must be added to it. Per metre of air flown,
 * with e the direction of the shaft, θ that of the flight through the air and a = θ − e the incidence, each a pair of small
 * angles up and right:
 *
 *   θ' = −(P/m) [(N₀ − CD) a + N₁ e'] + (k/m) J [B₀ a + B₁ e'] + g/U²
 *   e'' = −(P/I) [N₁ a + N₂ e'] + (P CD/m) e' + (k/I) J [B₁ a + B₂ e'] + (Ix/I) (p/U) J e'
 *   λ' = (P/m) [(N₀ − CD/2) a² + N₁ a·e'],   U = U₀ exp(−P CD s/m − λ),   τ' = λ U₀/U
 *   N_k = C_k + (4K/πd) ∫ x^k |a + x e'| dx,   P = ρS/2,   k = κρ2πR² p/U,   a(0) = −W/U,   e(0) = e'(0) = 0
 *
 * J turns up into right; p/U grows to w′ as in both models. The integral is the shaft's cross-flow; because of it the wind
 * changes how the arrow follows its fall, so the same is flown without wind and taken off. λ is the speed that the lift costs,
 * as a share, and τ/U₀ how much later the arrow arrives for it, drifting with the air. In linear laws without spin the flight
 * turns by q/(1 + q) W/U in all, q = P/m [(CNa − CD) l − |CMa|], l = (Σ CN x² − I CD/m)/|Σ CN x|.
 *
 * @returns null in still air, and for an arrow whose attitude is unknown or which keeps none
 * @source the rigid model's equations (rigid-motion.ts) for small angles; fourth-order Runge and Kutta
 * @checked unit: against the rigid model and the closed form
 */
export function entryInto(conditions: FlightConditions): (launch: Launch) => Entry | null {
  const { attitude } = conditions.arrow;
  if (attitude === null || !(attitude.firstMoment < 0)) return () => null;
  const windAt = airAt(conditions);
  const swung = sharedSwings(conditions, attitude);
  return (launch) => entryOf(conditions, windAt(launch.position[1]), launch, swung);
}

function entryOf(
  conditions: FlightConditions,
  wind: Vector3,
  launch: Launch,
  swung: ReturnType<typeof sharedSwings>,
): Entry | null {
  const { ahead, up, right } = axesOf(launch);
  const start = swingStart(conditions, wind, launch);
  const { airspeed, incidence } = start;
  if (!(Math.hypot(...incidence) > STILL)) return null;
  const { blown, still } = swung(start, length(launch.velocity));
  // Metres of air flown for one of range, as at the launch.
  const airPerRange = airspeed / launch.velocity[0];
  const wayTo = (range: number): number => (range - launch.position[0]) * airPerRange;
  const across = ([a, b]: Pair): Vector3 => add(scale(up, a), scale(right, b));
  return {
    offset: (range) => {
      const [there, here] = [blown(wayTo(range)), still(wayTo(range))];
      const moved = add(
        across(difference(there.offset, here.offset)),
        scale(wind, (there.late - here.late) / airspeed),
      );
      // What the air carried along the line of sight meanwhile is taken back along the flight.
      const flight = add(ahead, across(there.turn));
      const back = moved[0] / flight[0];
      return [moved[1] - back * flight[1], moved[2] - back * flight[2]];
    },
    velocity: (range, forwardSpeed) => {
      const way = wayTo(range);
      const turned = across(difference(blown(way).turn, still(way).turn));
      const speed = forwardSpeed * airPerRange;
      return [turned[1] * speed, turned[2] * speed];
    },
  };
}

/** Along a launch, and square to it up and right. */
function axesOf({ velocity }: Pick<Launch, 'velocity'>): Readonly<Record<'ahead' | 'up' | 'right', Vector3>> {
  const ahead = unit(velocity);
  const right = unit(cross(ahead, [0, 1, 0]));
  return { ahead, right, up: cross(right, ahead) };
}

function swingStart(
  conditions: FlightConditions,
  wind: Vector3,
  launch: Pick<Launch, 'velocity'>,
): SwingStart {
  const { up, right } = axesOf(launch);
  const airspeed = length(subtract(launch.velocity, wind));
  const [gx, gy] = gravity(conditions);
  return {
    airspeed,
    incidence: [-dot(wind, up) / airspeed, -dot(wind, right) / airspeed],
    fall: (gx * up[0] + gy * up[1]) / airspeed ** 2,
  };
}

const difference = ([a, b]: Pair, [c, d]: Pair): Pair => [a - c, b - d];

/**
 * Elevation of the launch for which the swing is integrated, rad: of a bow at some 40 m. Of no effect but on the share it
 * stands for below.
 */
const REFERENCE_ELEVATION = 0.03;
/** Speeds that differ by no more than this are one speed. */
const SAME_SPEED = 1e-9;

/**
 * Swings of one arrow from many launches of one bow. They start so alike that one integration serves them all: a start a little
 * larger and turned a little gives a swing as much larger and turned as much, to a thousandth of it where the wind blows
 * across, and exactly where the angles are so small that the shaft's cross-flow counts for nothing. It is integrated for one
 * launch that depends on nothing but the speed, so that the hits are a smooth function of the launch, whatever was asked
 * before.
 */
function sharedSwings(
  conditions: FlightConditions,
  attitude: Attitude,
): (start: SwingStart, speed: number) => { readonly blown: SwingPath; readonly still: SwingPath } {
  const { arrow, air } = conditions;
  const wind = airAt(conditions)(0);
  const ahead: Vector3 = [Math.cos(REFERENCE_ELEVATION), Math.sin(REFERENCE_ELEVATION), 0];
  let last = { speed: Number.NaN, incidence: NONE, blown: NO_SWING, still: NO_SWING };
  return (start, speed) => {
    if (!(Math.abs(speed / last.speed - 1) <= SAME_SPEED)) {
      const launch = { velocity: scale(ahead, speed) };
      const reference = swingStart(conditions, wind, launch);
      const swung = (incidence: Pair): SwingPath =>
        swingPath(arrow, attitude, air, { ...reference, incidence });
      const { incidence } = reference;
      last = { speed, incidence, blown: swung(incidence), still: swung(NONE) };
    }
    const { blown, still, incidence } = last;
    const ratio = quotient(start.incidence, incidence);
    return {
      still,
      blown: (way) => {
        const [swung, unswung] = [blown(way), still(way)];
        const scaled = (of: 'offset' | 'turn'): Pair =>
          sum(unswung[of], product(ratio, difference(swung[of], unswung[of])));
        const late = unswung.late + (ratio[0] ** 2 + ratio[1] ** 2) * (swung.late - unswung.late);
        return { offset: scaled('offset'), turn: scaled('turn'), late };
      },
    };
  };
}

const NONE: Pair = [0, 0];
const NO_SWING: SwingPath = () => ({ offset: NONE, turn: NONE, late: 0 });

/** Pairs as complex numbers; where there is nothing to divide by, nothing comes of it. */
const quotient = ([a, b]: Pair, [c, d]: Pair): Pair => {
  const size = c * c + d * d;
  return size === 0 ? NONE : [(a * c + b * d) / size, (b * c - a * d) / size];
};
const sum = ([a, b]: Pair, [c, d]: Pair): Pair => [a + c, b + d];
const product = ([a, b]: Pair, [c, d]: Pair): Pair => [a * c - b * d, a * d + b * c];
