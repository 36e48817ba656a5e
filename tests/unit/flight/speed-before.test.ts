import { expect, it } from 'vitest';
import { launchFromEye } from '../../../src/flight/launch.ts';
import { speedBefore } from '../../../src/flight/speed-before.ts';
import { fly } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { conditionsOf, pointArrow, seaLevel } from './point-arrow.ts';

const arrow = pointArrow(0.03, 0.006, 2.5);

it('is 0.12276 m/s more a metre before 85 m/s, by hand', () => {
  // k = 1.225 x 2.5 x (pi/4) 0.006^2 / (2 x 0.03) = 8.6590e-5 / 0.06 = 1.44317e-3 per metre; 85 (exp(k) - 1) = 0.12276.
  expect(Math.abs(speedBefore(arrow, seaLevel, si(85), 1) - 85 - 0.12276)).toBeLessThan(
    5e-6 /* m/s, half the last digit by hand */,
  );
});

it('is undone by flying the way again, but for the fall', () => {
  const before = speedBefore(arrow, seaLevel, si(85), 2);
  const [state] = fly(conditionsOf(arrow), launchFromEye(before, si(0)), [2]);
  const [vx = 0] = state?.velocity ?? [];
  // Falling turns the path by g x / v^2 = 0.0027 rad at most: its square, 7e-6, is the share of the speed that is left out.
  expect(Math.abs(vx / 85 - 1)).toBeLessThan(7e-6 /* that share */);
});

it('is the speed itself over no way', () => expect(speedBefore(arrow, seaLevel, si(85), 0)).toBe(85));
