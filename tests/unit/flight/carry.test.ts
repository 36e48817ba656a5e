import { expect, it } from 'vitest';
import { carry } from '../../../src/flight/carry.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { conditionsOf, pointArrow } from './point-arrow.ts';

it('without drag an arrow from the ground carries v^2/g at 45 deg; from eye height h, v/g sqrt(v^2 + 2 g h)', () => {
  const found = carry(conditionsOf(pointArrow(0.02, 0.006, 0)), si(60));
  const exact = (60 / 9.80665) * Math.sqrt(60 ** 2 + 2 * 9.80665 * 1.6);
  expect(Math.abs(found.distance - exact)).toBeLessThan(
    0.1 /* m: the elevation is found to 0.01 rad, and 370 m x 2 x 0.01^2 = 0.07 */,
  );
});

it('drag shortens it and lowers the best elevation', () => {
  const dragged = carry(conditionsOf(pointArrow(0.029, 0.00625, 2.5)), si(85));
  expect(dragged.distance).toBeLessThan(85 ** 2 / 9.80665);
  expect(dragged.distance).toBeGreaterThan(200);
  expect(dragged.elevation).toBeLessThan(Math.PI / 4);
});
