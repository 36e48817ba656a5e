import { describe, expect, it } from 'vitest';
import type { Fins } from '../../../src/arrow/flying-arrow.ts';
import { shaftPoints } from '../../../src/flight/cross-flow.ts';
import { freeFallAt } from '../../../src/flight/free-fall.ts';
import { namedRigidState } from '../../../src/flight/rigid-frame.ts';
import { CLEAN, rigidLaunch, rigidLaunchState } from '../../../src/flight/rigid-launch.ts';
import { wakeGivesBack, wakePlace } from '../../../src/flight/wake-passing.ts';
import { dot, length } from '../../../src/numerics/vector.ts';
import { si } from '../../../src/quantities/quantity.ts';

const close = (found: readonly number[], expected: readonly number[], within = 1e-13) => {
  expect(found).toHaveLength(expected.length);
  for (const [i, value] of expected.entries())
    expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThan(within);
};

describe('the three points of a shaft', () => {
  const [length0, first] = [0.7, -0.07];
  const points = shaftPoints([length0, first, 0], 0.006, 1.1);
  /** Sum of weights and powers of places, without the factor 4K/(pi d). */
  const moment = (k: number): number =>
    points.reduce((sum, { place, weight }) => sum + weight * place ** k, 0) / ((4 * 1.1) / (Math.PI * 0.006));

  it('integrate every power up to the fifth along a shaft from -0.45 to 0.25 m', () => {
    for (const k of [0, 1, 2, 3, 4, 5])
      expect(moment(k)).toBeCloseTo((0.25 ** (k + 1) - (-0.45) ** (k + 1)) / (k + 1), 14);
  });
  it('go from the rear to the front', () => {
    const places = points.map(({ place }) => place);
    expect(places).toEqual(places.toSorted((a, b) => a - b));
    expect(places[1]).toBeCloseTo(-0.1, 14);
  });
});

describe('what vanes get back of the wake of blades', () => {
  const vanes = { slope: 20, place: si<'m'>(-0.35), count: 3 };
  const fins = {
    vanes,
    blades: null,
    wake: { slope: 6, halfAngle: si<'rad'>(0.1) },
    uncertainty: { vanes: 0, blades: 0, wake: 0 },
  };

  it.each([
    [0, 0],
    [0.1, 3],
    [0.2, 6 * (4 / 5)],
  ])('at an incidence of %d rad is %d of 6: a half at the half angle', (incidence, back) =>
    // Squares of 80 m/s and of what of it goes across.
    expect(wakeGivesBack(fins)((80 * incidence) ** 2, 80)).toBeCloseTo(back, 12),
  );
  it('is nothing without a wake, and nowhere', () => {
    const unwoken: Fins = { ...fins, wake: null };
    expect(wakeGivesBack(unwoken)(1, 80)).toBe(0);
    expect(wakeGivesBack(undefined)(1, 80)).toBe(0);
    expect([
      wakePlace(fins),
      wakePlace(unwoken),
      wakePlace({ ...fins, vanes: null }),
      wakePlace(undefined),
    ]).toEqual([-0.35, 0, 0, 0]);
  });
});

describe('the launch of a rigid arrow', () => {
  const launch = { position: [1, 0.1, 0] as const, velocity: [80, 0, 0] as const, spin: si<'rad/s'>(5) };

  it('clean lies along its flight and does not turn', () => {
    const { axis, turning, roll } = rigidLaunch({ ...launch, velocity: [60, 11, 0] });
    close(axis, [60 / 61, 11 / 61, 0]);
    close(turning, [0, 0, 0]);
    expect(roll).toBe(0);
  });

  it('tail up points the nose down, tail left points it right, by just that angle', () => {
    close(rigidLaunch(launch, { ...CLEAN, tailUp: si(0.1) }).axis, [Math.cos(0.1), -Math.sin(0.1), 0]);
    close(rigidLaunch(launch, { ...CLEAN, tailLeft: si(0.1) }).axis, [Math.cos(0.1), 0, Math.sin(0.1)]);
    // Both: by the root of the sum of squares, as much down as right.
    const both = rigidLaunch(launch, { ...CLEAN, tailUp: si(0.03), tailLeft: si(0.04) }).axis;
    close(both, [Math.cos(0.05), -0.6 * Math.sin(0.05), 0.8 * Math.sin(0.05)]);
  });

  it('a tail that rises turns the nose down, one that goes left turns it right, always square to the shaft', () => {
    close(rigidLaunch(launch, { ...CLEAN, tailRisingRate: si(3), tailLeftRate: si(2) }).turning, [0, -3, 2]);
    const aslant = rigidLaunch(launch, { ...CLEAN, tailUp: si(0.3), tailRisingRate: si(3) });
    expect(dot(aslant.axis, aslant.turning)).toBeCloseTo(0, 14);
    // What is left of the rate is what of it is square to the shaft: 3 cos 0.3.
    expect(length(aslant.turning)).toBeCloseTo(3 * Math.cos(0.3), 13);
  });

  it('of an arrow that stands half a radian off its flight is refused', () => {
    expect(() => rigidLaunch(launch, { ...CLEAN, tailUp: si(0.3), tailLeft: si(0.4) })).toThrow(
      /angle of the shaft/,
    );
    expect(() => rigidLaunch(launch, { ...CLEAN, tailUp: si(0.3), tailLeft: si(0.39) })).not.toThrow();
  });

  it('becomes a state, with its roll for an arrow that is not alike all round, and back', () => {
    const start = rigidLaunch(
      launch,
      { ...CLEAN, tailUp: si(0.1), tailLeft: si(0.2), tailLeftRate: si(4) },
      si(1.2),
    );
    const state = rigidLaunchState(start, true);
    expect(state).toHaveLength(12);
    expect(rigidLaunchState(start, false)).toEqual(state.slice(0, 11));
    const named = namedRigidState(1, state);
    close(named.axis, start.axis);
    close(named.turning, start.turning);
    expect([named.roll, named.height, named.spin]).toEqual([1.2, 0.1, 5]);
    expect(namedRigidState(1, rigidLaunchState(start, false)).roll).toBe(0);
  });
});

it('free fall at the equator, a pole and at 45 degrees, as published for the ellipsoid; and a kilometre up', () => {
  // NIMA TR8350.2 table 3.4: 9.7803253359 and 9.8321849378 m/s2; at 45 degrees 9.80620 (from memory).
  expect(freeFallAt(si(0), si(0))).toBeCloseTo(9.7803253359, 10);
  expect(freeFallAt(si(Math.PI / 2), si(0))).toBeCloseTo(9.8321849378, 8);
  expect(freeFallAt(si(-Math.PI / 4), si(0))).toBeCloseTo(9.8062, 4);
  // By hand at the equator: 2 (1 + 1/298.257 + 0.00344979)/6378.137 less, and three squares of 1/6378.137 more.
  const expected =
    9.7803253359 * (1 - (2 * (1 + 1 / 298.257223563 + 0.00344978650684)) / 6378.137 + 3 / 6378.137 ** 2);
  expect(freeFallAt(si(0), si(1000))).toBeCloseTo(expected, 11);
});
