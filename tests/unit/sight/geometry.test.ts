import { describe, expect, it } from 'vitest';
import { si } from '../../../src/quantities/quantity.ts';
import { launchAngle, launchThrough } from '../../../src/sight/geometry.ts';
import { inventedRig } from './invented-rig.ts';

const { geometry } = inventedRig;
const E = 0.8382; // m

describe('a sight whose travel leans', () => {
  it.each([0.5, -0.2])(
    'raises the arrow by the part of the travel that is up and down, at %d rad',
    (lean) => {
      const launch = launchThrough(
        { ...geometry, lean: si(lean) },
        { down: 0.05, windage: 0 },
        si(0),
        si(85),
      );
      // The pin stands s cos(lean) below and s sin(lean) to the left, so the arrow points so far above and to the right of it.
      expect(launchAngle(launch)).toBeCloseTo(Math.atan((0.05 * Math.cos(lean)) / E), 14);
      expect(Math.atan2(launch.velocity[2], launch.velocity[0])).toBeCloseTo(
        Math.atan((0.05 * Math.sin(lean)) / Math.hypot(E, 0.05 * Math.cos(lean))),
        14,
      );
    },
  );
});

describe('the jump of an arrow', () => {
  const pin = { down: 0.03, windage: 0.002 };
  const plain = launchThrough(geometry, pin, si(0.1), si(85));
  const jumped = launchThrough(
    { ...geometry, jump: { rise: si(0.01), angle: si(0.02) } },
    pin,
    si(0.1),
    si(85),
  );

  it('starts it as if from a place higher by the rise at the eye, and along the angle from there on', () => {
    const [x, y, z] = plain.position;
    expect(jumped.position[0]).toBe(x);
    expect(jumped.position[1]).toBeCloseTo(y + 0.01 + x * Math.tan(0.02), 14);
    expect(jumped.position[2]).toBe(z);
  });

  it('turns its way up by the angle, at the speed it had and as far to the side', () => {
    const up = ([x, y]: readonly number[]): number => Math.atan2(y ?? Number.NaN, x ?? Number.NaN);
    expect(up(jumped.velocity) - up(plain.velocity)).toBeCloseTo(0.02, 13);
    expect(Math.hypot(...jumped.velocity)).toBeCloseTo(85, 11);
    expect(jumped.velocity[2]).toBe(plain.velocity[2]);
  });
});
