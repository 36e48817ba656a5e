import { describe, expect, it } from 'vitest';
import type { Attitude, FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import { shaftPoints } from '../../../src/flight/cross-flow.ts';
import { type SwingStart, swingPath } from '../../../src/flight/swing-path.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { seaLevel, spinningArrow } from './point-arrow.ts';

const known: Attitude = spinningArrow.attitude ?? expect.fail('the arrow has surfaces');
/** Made light, fat and fast to spin, so that everything that acts on a swing acts on it visibly. */
const attitude: Attitude = {
  ...known,
  axialInertia: si(8e-6),
  transverseInertia: si(4e-4),
  spinPerMetre: si(14),
  spinUp: si(1.5),
  shaftMoments: [0.72, -0.12, 0.05],
  fins: {
    vanes: { slope: 24, place: si(-0.4), count: 3 },
    blades: { slope: 7, place: si(0.25), count: 3 },
    wake: { slope: 5, halfAngle: si(0.06) },
    uncertainty: { vanes: 0, blades: 0, wake: 0 },
  },
};
const arrow: FlyingArrow = {
  ...spinningArrow,
  attitude,
  sideForce: 1,
  dragScale: 1.2,
  drag: { at: (reynolds) => 2 + 3e-5 * reynolds },
};
const start: SwingStart = { airspeed: 65, incidence: [0.06, -0.11], fall: -2.3e-3 };

/** Pairs up and right as complex numbers, up + i right: what turns up into right is i. */
type C = readonly [number, number];
const plus = (...all: readonly C[]): C => [
  all.reduce((s, [a]) => s + a, 0),
  all.reduce((s, [, b]) => s + b, 0),
];
const times = ([a, b]: C, k: number): C => [a * k, b * k];
const turned = ([a, b]: C): C => [-b, a];

interface Swing {
  readonly e: C;
  readonly d: C;
  readonly turn: C;
  readonly offset: C;
  readonly slowed: number;
  readonly late: number;
}

/** The equations as the comment of entry.ts has them. */
function rates(s: number, { e, d, turn, slowed }: Swing): Swing {
  const { density: rho, viscosity } = seaLevel;
  const { mass: m, diameter } = arrow;
  const {
    normalSlope,
    firstMoment,
    secondMoment,
    axialInertia,
    transverseInertia: I,
    shaftMoments,
  } = attitude;
  const P = (rho * Math.PI * diameter ** 2) / 8;
  const CD = 1.2 * (2 + (3e-5 * rho * start.airspeed * diameter) / viscosity);
  const a = plus(turn, start.incidence, times(e, -1));
  const size2 = a[0] ** 2 + a[1] ** 2;
  const back = (5 * size2) / (size2 + 0.06 ** 2);
  const N = (k: number, slopes: number): number =>
    shaftPoints(shaftMoments, diameter, 1.1).reduce(
      (sum, { place, weight }) => sum + weight * place ** k * Math.hypot(...plus(a, times(d, place))),
      slopes + back * (-0.4) ** k,
    );
  const [N0, N1, N2] = [N(0, normalSlope), N(1, firstMoment), N(2, secondMoment)];
  const [B0, B1, B2] = shaftMoments;
  const spin = attitude.spinPerMetre * (1 - Math.exp((-rho / attitude.spinUp) * s));
  const k = rho * 2 * Math.PI * (diameter / 2) ** 2 * spin;
  const slower = Math.exp((P * CD * s) / m + slowed);
  return {
    e: d,
    d: plus(
      times(plus(times(a, N1), times(d, N2)), -P / I),
      times(d, (P * CD) / m),
      times(turned(plus(times(a, B1), times(d, B2))), k / I),
      times(turned(d), (axialInertia / I) * spin),
    ),
    turn: plus(
      times(plus(times(a, N0 - CD), times(d, N1)), -P / m),
      times(turned(plus(times(a, B0), times(d, B1))), k / m),
      [start.fall * slower ** 2, 0],
    ),
    offset: turn,
    slowed: (P / m) * ((N0 - CD / 2) * size2 + N1 * (a[0] * d[0] + a[1] * d[1])),
    late: slowed * slower,
  };
}

const moved = (from: Swing, by: Swing, step: number): Swing => ({
  e: plus(from.e, times(by.e, step)),
  d: plus(from.d, times(by.d, step)),
  turn: plus(from.turn, times(by.turn, step)),
  offset: plus(from.offset, times(by.offset, step)),
  slowed: from.slowed + by.slowed * step,
  late: from.late + by.late * step,
});

/** The midpoint rule in steps of a centimetre: right to 1e-6 of a swing of 7 m. */
function integrated(ways: readonly number[]): readonly Swing[] {
  const STEP = 0.01;
  const none: C = [0, 0];
  let now: Swing = { e: none, d: none, turn: none, offset: none, slowed: 0, late: 0 };
  const found: Swing[] = [];
  for (let i = 0; found.length < ways.length; i += 1) {
    if (Math.abs(i * STEP - at(ways, found.length)) < STEP / 2) found.push(now);
    const half = moved(now, rates(i * STEP, now), STEP / 2);
    now = moved(now, rates((i + 0.5) * STEP, half), STEP);
  }
  return found;
}

const ways = [0, 1, 2.5, 4, 7, 11, 20, 40];
const swings = integrated(ways);
const path = swingPath(arrow, attitude, seaLevel, start);

describe('a swinging flight is what its equations say in steps of a centimetre', () => {
  it.each(ways.map((way, i) => [way, i] as const))('after %d m of air', (way, i) => {
    const [{ offset, turn, late }, expected] = [path(way), at(swings, i)];
    // Steps of 0.4 rad of the swing err by 1e-4 of it, which adds up in the way lost: a fourth of the step leaves 2e-5 of 0.8
    // %. A turn
    // is read in proportion between steps.
    expect(Math.hypot(...plus(offset, times(expected.offset, -1)))).toBeLessThan(3e-5 * (1 + way) /* m */);
    expect(Math.hypot(...plus(turn, times(expected.turn, -1)))).toBeLessThan(5e-4 /* rad of 0.1 */);
    expect(Math.abs(late - expected.late)).toBeLessThan(1e-2 * expected.late + 1e-5 /* m */);
  });

  it('in whatever order it is asked', () => {
    const anew = swingPath(arrow, attitude, seaLevel, start);
    expect(ways.toReversed().map(anew)).toEqual(ways.toReversed().map(path));
  });

  it('and everything that acts on it acts visibly', () => {
    const { offset, turn, late } = path(40);
    expect(
      Math.min(...offset.map(Math.abs), ...turn.map((angle) => 40 * Math.abs(angle)), late),
    ).toBeGreaterThan(0.02);
  });
});
