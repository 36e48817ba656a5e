import { describe, expect, it } from 'vitest';
import { earthRotation, gravity, namedState, speedOf } from '../../../src/flight/frame.ts';
import { launchLineHeight, launchState } from '../../../src/flight/launch.ts';
import { airAt } from '../../../src/flight/moving-air.ts';
import { si } from '../../../src/quantities/quantity.ts';

const RATE = 7.292115e-5; // rad/s
const QUARTER = Math.PI / 2;
const close = (found: readonly number[], expected: readonly number[], within: number) => {
  for (const [i, value] of expected.entries())
    expect(Math.abs((found[i] ?? Number.NaN) - value)).toBeLessThan(within);
};

describe('gravity', () => {
  it('holds back uphill and pulls across the line of sight: 30 degrees', () =>
    close(gravity({ slope: si(Math.PI / 6), freeFall: 10 }), [-5, -5 * Math.sqrt(3), 0], 1e-14));
});

describe('the turning of the Earth', () => {
  it.each<[string, number, number | null, number, readonly number[]]>([
    ['at the pole is about the plumb line', QUARTER, 0, 0, [0, RATE, 0]],
    ['at the equator shooting north is about the line of sight', 0, 0, 0, [RATE, 0, 0]],
    ['at the equator shooting south is against it', 0, Math.PI, 0, [-RATE, 0, 0]],
    ['at the equator shooting east is about what lies to the left', 0, QUARTER, 0, [0, 0, -RATE]],
    ['at the pole shooting straight up is about the line of sight', QUARTER, 0, QUARTER, [RATE, 0, 0]],
    [
      'at the equator shooting north and straight up is about what lies behind the head',
      0,
      0,
      QUARTER,
      [0, -RATE, 0],
    ],
    ['without a bearing keeps what is about the plumb line', Math.PI / 6, null, 0, [0, RATE / 2, 0]],
  ])('%s', (_, latitude, azimuth, slope, expected) =>
    close(
      earthRotation({ latitude: si(latitude), azimuth: azimuth === null ? null : si(azimuth) }, si(slope)),
      expected,
      1e-19,
    ),
  );
});

it('the state of a launch, and its names', () => {
  const launch = {
    position: [0.9, -0.1, 0.02] as const,
    velocity: [60, 2, -1] as const,
    spin: si<'rad/s'>(7),
  };
  const state = launchState(launch);
  expect(state).toEqual([-0.1, 0.02, 60, 2, -1, 7, 0]);
  expect(namedState(0.9, state)).toEqual({
    range: 0.9,
    time: 0,
    height: -0.1,
    lateral: 0.02,
    velocity: [60, 2, -1],
    spin: 7,
  });
  expect(speedOf(namedState(0.9, state))).toBeCloseTo(Math.sqrt(3605), 12);
  // 30 m on, two in sixty: a metre higher.
  expect(launchLineHeight(launch, 30.9)).toBeCloseTo(0.9, 14);
});

describe('moving air', () => {
  const wind = {
    tail: si<'m/s'>(3),
    across: si<'m/s'>(-4),
    up: si<'m/s'>(2),
    shear: 0.5,
    referenceHeight: si<'m'>(4),
  };
  const air = (more: object = {}, slope = 0) =>
    airAt({ wind: { ...wind, ...more }, slope: si(slope), eyeHeight: si(1.5) });

  it('grows with the power of its height over the ground: at 9 m half as much again as at 4 m', () =>
    close(air()(7.5), [4.5, 2, -6], 1e-14));
  it('is alike everywhere without shear', () => close(air({ shear: 0 })(-50), [3, 2, -4], 1e-14));
  it('is at the ground, and below it, what it is 5 cm above', () => {
    const gust = Math.sqrt(0.05 / 4);
    for (const height of [-1.45, -1.5, -30]) close(air()(height), [3 * gust, 2, -4 * gust], 1e-14);
  });
  it('rises plumb however the line of sight leans', () =>
    close(air({ shear: 0 }, Math.PI / 6)(0), [3 + 1, Math.sqrt(3), -4], 1e-14));
});
