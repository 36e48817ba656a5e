import { expect, it } from 'vitest';
import type { Attitude } from '../../../src/arrow/flying-arrow.ts';
import { launchFromEye } from '../../../src/flight/launch.ts';
import { fly } from '../../../src/flight/trajectory.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { conditionsOf, spinningArrow } from './point-arrow.ts';

const attitude: Attitude = spinningArrow.attitude ?? expect.fail('the arrow has surfaces');
const flown = (changed: Attitude | null) =>
  fly(conditionsOf({ ...spinningArrow, attitude: changed }), launchFromEye(si(85), si(0.02)), [30, 60, 90]);

it.each([0.1, 0])(
  'an arrow whose pressure acts %d ahead of its balance, or at it, has no attitude to ride at: it flies as a point',
  (ahead) => {
    const point = flown(null);
    for (const [i, state] of flown({ ...attitude, firstMoment: si(ahead) }).entries()) {
      expect(Math.abs(state.height - (point[i]?.height ?? Number.NaN))).toBeLessThan(1e-9 /* m */);
      expect(Math.abs(state.lateral)).toBeLessThan(1e-12 /* m */);
    }
  },
);

it('one whose pressure acts behind it is lifted and drifts: what the above has no share in', () => {
  const [near, , far] = flown(attitude);
  const [, , point] = flown(null);
  expect(Math.abs((far?.height ?? 0) - (point?.height ?? 0))).toBeGreaterThan(1e-5 /* m */);
  expect(far?.lateral).toBeLessThan(near?.lateral ?? Number.NaN);
});
