import { describe, expect, it } from 'vitest';
import type { Flyer } from '../../../src/flight/trajectory.ts';
import { flyer } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { impact, pinForHit } from '../../../src/sight/zero.ts';
import { conditionsOf, spinningArrow } from '../flight/point-arrow.ts';
import { inventedRig } from './invented-rig.ts';

describe('a pin set for a hit in both directions', () => {
  it('is not done while the arrow is off to the side, however right its height', () => {
    // Arrows that all come in at the height of the eye, 0.1 m to the right of where they were pointed: a pin stands right of the
    // eye by w, and at E ahead and s below turns them left by w over the root of E^2 + s^2: 30 m out that must be 0.1/30.
    const aside: Flyer = {
      ...flyer(inventedRig.conditions),
      entered: ({ velocity: [vx, vy, vz] }, [range]) => [
        [0, 0.1 + ((range ?? Number.NaN) * vz) / vx, vx, vy, vz, 0, 0],
      ],
    };
    const { down, windage } = pinForHit(inventedRig, 30, null, aside);
    expect(windage).toBeCloseTo((0.1 * Math.hypot(0.8382, down)) / 30, 8);
  });

  it('is not done while the arrow is high or low, however straight', () => {
    const high: Flyer = {
      ...flyer(inventedRig.conditions),
      entered: ({ velocity: [vx, vy, vz] }, [range]) => [
        [0.2 + ((range ?? Number.NaN) * vy) / vx, 0, vx, vy, vz, 0, 0],
      ],
    };
    // A pin below the eye by s points the arrow up by s/E: it must stand 0.2 E/30 above the eye.
    expect(pinForHit(inventedRig, 30, null, high).down).toBeCloseTo((-0.2 * 0.8382) / 30, 8);
    expect(pinForHit(inventedRig, 30, 0, high).down).toBeCloseTo((-0.2 * 0.8382) / 30, 8);
  });

  it('hits in both with a canted bow, a leaning sight and a crosswind', () => {
    const conditions = conditionsOf(spinningArrow);
    const rig = {
      ...inventedRig,
      conditions: { ...conditions, wind: { ...conditions.wind, across: si<'m/s'>(5) } },
      cant: si<'rad'>(0.3),
      geometry: { ...inventedRig.geometry, lean: si<'rad'>(0.2) },
    };
    const flight = flyer(rig.conditions);
    const hit = impact(flight, rig, pinForHit(rig, 60, null, flight), 60);
    expect(Math.abs(hit.height)).toBeLessThan(1e-7 /* m: as promised */);
    expect(Math.abs(hit.lateral)).toBeLessThan(1e-7 /* m */);
  });

  it('is tried near the hit: the flat-fire law misses a range by a hundredth of the fall, and two flights or three do', () => {
    const flight = flyer(inventedRig.conditions);
    for (const [yards, most] of [
      [20, 2],
      [60, 3],
      [100, 3],
    ] as const) {
      const heights: number[] = [];
      const watched: Flyer = {
        ...flight,
        entered: (launch, ranges) => {
          const states = flight.entered(launch, ranges);
          heights.push(states[0]?.[0] ?? Number.NaN);
          return states;
        },
      };
      const range = yards * 0.9144;
      const pin = pinForHit(inventedRig, range, 0, watched);
      expect(heights.length).toBeLessThanOrEqual(most);
      const fall = (9.80665 / 2) * (range / inventedRig.launchSpeed) ** 2;
      expect(Math.abs((heights[0] ?? Number.NaN) / fall)).toBeLessThan(
        0.01 /* of the fall without drag: as promised */,
      );
      // The miss that ended the search, below 1e-7 m, is undone as well.
      expect(Math.abs(impact(flight, inventedRig, pin, range).height)).toBeLessThan(1e-9 /* m */);
    }
  });
});

it.each([95, 120, 200])(
  'is told apart from a slip where corrections run away: no pin hits at %i m',
  (range) => {
    // 30 m/s throw nothing farther than v^2/g = 92 m, and hardly more with a breeze behind.
    const conditions = conditionsOf(spinningArrow);
    const rig = {
      ...inventedRig,
      conditions: {
        ...conditions,
        wind: { ...conditions.wind, tail: si<'m/s'>(0.8), across: si<'m/s'>(0.4) },
      },
      launchSpeed: si<'m/s'>(30),
      geometry: { ...inventedRig.geometry, peepToPin: si<'m'>(0.3048) },
    };
    for (const windage of [0, null])
      expect(() => pinForHit(rig, range, windage)).toThrow(
        expect.objectContaining({ name: 'NumericalError' }),
      );
  },
);
