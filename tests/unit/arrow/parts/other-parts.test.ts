import { expect, it } from 'vitest';
import { buildArrow } from '../../../../src/arrow/build.ts';
import { otherVanes, withPoint, withUsualBlades } from '../../../../src/arrow/parts/other-parts.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { ridgeCampParts, ridgeCampVanes } from '../ridge-camp-arrow.ts';

const spin = (vanes: typeof ridgeCampVanes) =>
  buildArrow({ parts: { ...ridgeCampParts, vanes } }).flying.attitude?.spinPerMetre;

it('puts straight vanes beside helical ones: that arrow does not spin', () => {
  expect(spin(ridgeCampVanes)).toBeGreaterThan(0);
  expect(spin(otherVanes(ridgeCampVanes))).toBe(0);
});

it('puts a right helical of 3 degrees beside vanes that do not turn, whichever key says so', () => {
  for (const straight of [
    { ...ridgeCampVanes, turn: 'none' as const },
    { ...ridgeCampVanes, angle: si<'rad'>(0) },
  ]) {
    const turned = otherVanes(straight);
    expect(turned.turn).toBe('right');
    expect(turned.angle).toBeCloseTo(0.05236, 5); // 3 x pi/180
  }
});

it('weighs and measures the same with blades in front as with a field point', () => {
  const [field, bladed] = [ridgeCampParts, withUsualBlades(ridgeCampParts)].map((parts) =>
    buildArrow({ parts }),
  );
  const heavier = (bladed?.flying.mass ?? Number.NaN) - (field?.flying.mass ?? Number.NaN);
  expect(Math.abs(heavier)).toBeLessThan(1e-16 /* kg: the order of a sum */);
  expect(bladed?.length).toBe(field?.length);
  // Surface far ahead of the balance point: the static margin shrinks.
  expect(bladed?.staticMargin).toBeLessThan(field?.staticMargin ?? Number.NaN);
});

it('leaves blades that are there, and takes them off for a field point', () => {
  const blades = {
    count: 2,
    length: si<'m'>(0.03),
    cuttingDiameter: si<'m'>(0.028),
    thickness: si<'m'>(0.001),
  };
  const bladed = withPoint(ridgeCampParts, 'fixed_blade', blades);
  expect(withUsualBlades(bladed)).toBe(bladed);
  expect(withPoint(bladed, 'field').point).toEqual({ ...ridgeCampParts.point, blades: undefined });
});
