import { expect, it } from 'vitest';
import type { FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import { carry } from '../../../src/flight/carry.ts';
import { launchFromEye, launchState } from '../../../src/flight/launch.ts';
import { flyer } from '../../../src/flight/trajectory.ts';
import { STANDARD_GRAVITY } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { conditionsOf, pointArrow, spinningArrow } from './point-arrow.ts';

it('without drag an arrow from the ground carries v^2/g at 45 deg; from eye height h, v/g sqrt(v^2 + 2 g h)', () => {
  const found = carry(conditionsOf(pointArrow(0.02, 0.006, 0)), si(60));
  const exact = (60 / 9.80665) * Math.sqrt(60 ** 2 + 2 * 9.80665 * 1.6);
  expect(Math.abs(found.distance - exact)).toBeLessThan(
    0.1 /* m: the elevation is found to 0.01 rad, and 370 m x 2 x 0.01^2 = 0.07 */,
  );
});

/** By hand: the farthest of a point's shots from eye height under constant drag, flown in steps of time. */
function farthestByTime(speed: number, dragPerMass: number): number {
  const shot = (elevation: number): number => {
    let [x, y, vx, vy] = [0, 1.6, speed * Math.cos(elevation), speed * Math.sin(elevation)];
    const dt = 5e-4;
    while (y > 0) {
      // The midpoint rule: half a step by the speed now, then a whole one by the speed there.
      const slow = dragPerMass * Math.hypot(vx, vy);
      const [mx, my] = [vx - (slow * vx * dt) / 2, vy - ((slow * vy + STANDARD_GRAVITY) * dt) / 2];
      const there = dragPerMass * Math.hypot(mx, my);
      [x, y] = [x + mx * dt, y + my * dt];
      [vx, vy] = [vx - there * mx * dt, vy - (there * my + STANDARD_GRAVITY) * dt];
    }
    return x;
  };
  return Math.max(...Array.from({ length: 41 }, (_, i) => shot(0.4 + 0.01 * i)));
}

// From a plain arrow to a child's with flu-flu vanes, which comes down all but upright.
it.each([
  [85, 0.03, 2.5],
  [60, 0.031, 9],
  [85, 0.02, 9.5],
  [40, 0.013, 9.5],
])(
  'an arrow of %f m/s, %f kg and a drag coefficient of %f carries as far as it does in steps of time',
  (speed, mass, drag) => {
    const conditions = conditionsOf(pointArrow(mass, 0.0076, drag));
    const dragPerMass = (conditions.air.density * (Math.PI / 4) * 0.0076 ** 2 * drag) / 2 / mass;
    const byTime = farthestByTime(speed, dragPerMass);
    const { distance } = carry(conditions, si(speed));
    expect(Math.abs(distance / byTime - 1)).toBeLessThan(
      2e-3 /* of the distance: it is told in whole tens of metres; the elevations here are 0.01 rad apart */,
    );
  },
);

it('drag shortens it and lowers the best elevation', () => {
  const dragged = carry(conditionsOf(pointArrow(0.029, 0.00625, 2.5)), si(85));
  expect(dragged.distance).toBeLessThan(85 ** 2 / 9.80665);
  expect(dragged.distance).toBeGreaterThan(200);
  expect(dragged.elevation).toBeLessThan(Math.PI / 4);
});

it('is the same for an arrow that spins: that turns it aside, not back', () => {
  const { attitude } = spinningArrow;
  const farther = (times: number): number => {
    const spun = { ...(attitude ?? expect.fail()), spinPerMetre: si<'rad/m'>(5.19 * times) };
    return carry(conditionsOf({ ...spinningArrow, attitude: spun }), si(85)).distance;
  };
  // Followed in full, in steps of a metre, it comes down where it does unspun.
  const elevation = si<'rad'>(0.7);
  const landing = (arrow: FlyingArrow): number => {
    const { onward } = flyer(conditionsOf(arrow), 1e-9);
    let [range, state] = [0, launchState(launchFromEye(si(85), elevation))];
    for (;;) {
      const next = onward(range, state, range + 1);
      if (next[0] < -1.6) return range + (state[0] + 1.6) / (state[0] - next[0]);
      [range, state] = [range + 1, next];
    }
  };
  const still = {
    ...spinningArrow,
    attitude: { ...(attitude ?? expect.fail()), spinPerMetre: si<'rad/m'>(0) },
  };
  expect(Math.abs(landing(spinningArrow) - landing(still))).toBeLessThan(1e-3 /* m: it is told in tens */);
  expect(farther(2)).toBe(farther(0));
});
