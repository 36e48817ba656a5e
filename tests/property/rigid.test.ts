import fc from 'fast-check';
import { expect, it } from 'vitest';
import { gravity, speedOf } from '../../src/flight/frame.ts';
import { launchFromEye } from '../../src/flight/launch.ts';
import type { RigidState } from '../../src/flight/rigid-frame.ts';
import { type Disturbance, rigidLaunch } from '../../src/flight/rigid-launch.ts';
import { flyRigid } from '../../src/flight/rigid-trajectory.ts';
import { dot } from '../../src/numerics/vector.ts';
import { STANDARD_GRAVITY } from '../../src/quantities/exact.ts';
import { si } from '../../src/quantities/quantity.ts';
import { huntingArrow } from '../unit/flight/hunting-arrow.ts';
import { conditionsOf } from '../unit/flight/point-arrow.ts';

const builds = [
  huntingArrow(),
  huntingArrow({ turn: 'left', count: 4 }),
  huntingArrow({ shape: 'fixed_blade' }),
];
const start = fc.record({
  build: fc.constantFrom(...builds),
  speed: fc.double({ min: 50, max: 100, noNaN: true }),
  angle: fc.double({ min: -0.2, max: 0.3, noNaN: true }),
  tailUp: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  tailLeft: fc.double({ min: -0.05, max: 0.05, noNaN: true }),
  tailRisingRate: fc.double({ min: -2, max: 2, noNaN: true }),
  tailLeftRate: fc.double({ min: -2, max: 2, noNaN: true }),
});
const RUNS = { numRuns: 40, seed: 1936 };
const ranges = [5, 15, 30, 60, 91.44];

const flown = (
  {
    build,
    speed,
    angle,
    ...disturbance
  }: { build: (typeof builds)[number]; speed: number; angle: number } & Record<keyof Disturbance, number>,
  tolerance = 1e-8,
): readonly RigidState[] =>
  flyRigid(
    conditionsOf(build.flying),
    rigidLaunch(launchFromEye(si(speed), si(angle)), {
      tailUp: si(disturbance.tailUp),
      tailLeft: si(disturbance.tailLeft),
      tailRisingRate: si(disturbance.tailRisingRate),
      tailLeftRate: si(disturbance.tailLeftRate),
    }),
    ranges,
    { tolerance },
  );

it('in still air the energy of flight, swing and height never rises', () => {
  fc.assert(
    fc.property(start, (drawn) => {
      const { mass, attitude } = drawn.build.flying;
      const energy = (state: RigidState): number =>
        (mass * speedOf(state) ** 2 +
          (attitude?.transverseInertia ?? 0) * dot(state.turning, state.turning) +
          (attitude?.axialInertia ?? 0) * state.spin ** 2) /
          2 -
        mass * gravity({ slope: si(0), freeFall: STANDARD_GRAVITY })[1] * state.height;
      const energies = flown(drawn).map(energy);
      for (const [i, later] of energies.entries())
        if (i > 0) expect(later).toBeLessThan(energies[i - 1] ?? Number.NaN);
    }),
    RUNS,
  );
});

it('the axis stays a unit vector and its rate square to it', () => {
  fc.assert(
    fc.property(start, (drawn) => {
      for (const { axis, turning } of flown(drawn)) {
        expect(Math.abs(dot(axis, axis) - 1)).toBeLessThan(
          1e-12 /* the solver keeps 1e-9 a step; normalising leaves rounding */,
        );
        expect(Math.abs(dot(axis, turning))).toBeLessThan(1e-12 * (1 + dot(turning, turning)));
      }
    }),
    RUNS,
  );
});

it('a tolerance ten times tighter moves the hit by less than 0.2 mm', () => {
  fc.assert(
    fc.property(start, (drawn) => {
      const [usual, tight] = [flown(drawn, 1e-6).at(-1), flown(drawn, 1e-7).at(-1)];
      const apart = Math.hypot(
        (usual?.height ?? 0) - (tight?.height ?? 1),
        (usual?.lateral ?? 0) - (tight?.lateral ?? 1),
      );
      expect(apart).toBeLessThan(2e-4 /* m */);
    }),
    RUNS,
  );
});
