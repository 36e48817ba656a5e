import { describe, expect, it } from 'vitest';
import type { FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import { swing } from '../../../src/arrow/lift/swing.ts';
import { calm } from '../../../src/atmosphere/wind.ts';
import { STATE, speedOf } from '../../../src/flight/frame.ts';
import { launchFromEye } from '../../../src/flight/launch.ts';
import type { RigidState } from '../../../src/flight/rigid-frame.ts';
import { CLEAN, type RigidLaunch, rigidLaunch } from '../../../src/flight/rigid-launch.ts';
import { flyRigid, type RigidFlightOptions, rigidFlyer } from '../../../src/flight/rigid-trajectory.ts';
import { fly, flyer } from '../../../src/flight/trajectory.ts';
import {
  add,
  cross,
  dot,
  length,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../../src/numerics/vector.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from './hunting-arrow.ts';
import { conditionsOf } from './point-arrow.ts';

const YARD = 0.9144; // m
const yards = (...ranges: number[]): number[] => ranges.map((range) => range * YARD);
const arrow = huntingArrow().flying;
const conditions = conditionsOf(arrow);
const level = launchFromEye(si(85.344), si(0));
const clean = rigidLaunch(level);
const last = (states: readonly RigidState[]): RigidState => states.at(-1) ?? expect.fail('no state');
const at100 = (launch: RigidLaunch, options: RigidFlightOptions = {}, more = {}): RigidState =>
  last(flyRigid({ ...conditions, ...more }, launch, yards(100), options));

const spun = (flying: FlyingArrow, spinPerMetre: number): FlyingArrow => ({
  ...flying,
  attitude: { ...(flying.attitude ?? expect.fail()), spinPerMetre: si(spinPerMetre) },
});

describe('in a vacuum', () => {
  const air = { ...conditions.air, density: si<'kg/m3'>(0) };
  const { axialInertia: Ix, transverseInertia: Iy } = arrow.attitude ?? expect.fail();
  const spin = 400;
  const axis = unit([1, 0.05, 0.02]);
  const launch: RigidLaunch = {
    ...level,
    spin: si(spin),
    axis,
    turning: cross([0.1, 0.4, -0.6], axis),
    roll: si(0),
  };
  const states = flyRigid({ ...conditions, air }, launch, [1, 20, 40, 60], { tolerance: 1e-11 });
  const momentum = ({
    axis: e,
    turning: d,
    spin: p,
  }: Pick<RigidState, 'axis' | 'turning' | 'spin'>): Vector3 => add(scale(e, Ix * p), scale(cross(e, d), Iy));
  const H = momentum(launch);

  it('keeps its angular momentum, all three components, to 1e-9', () => {
    for (const state of states)
      expect(length(subtract(momentum(state), H)) / length(H)).toBeLessThan(1e-9 /* relative */);
  });

  it('keeps the energy of its turning, to 1e-9', () => {
    const energy = dot(launch.turning, launch.turning);
    for (const state of states)
      expect(Math.abs(dot(state.turning, state.turning) / energy - 1)).toBeLessThan(1e-9 /* relative */);
  });

  it('its axis goes round the angular momentum at |H| / Iy, to 1e-9 rad', () => {
    const pole = unit(H);
    const square = (e: Vector3): Vector3 => unit(subtract(e, scale(pole, dot(e, pole))));
    for (const { axis: e, time } of states) {
      const expected = (length(H) / Iy) * time;
      const angle = Math.atan2(dot(pole, cross(square(axis), square(e))), dot(square(axis), square(e)));
      const turns = Math.round((expected - angle) / (2 * Math.PI));
      expect(Math.abs(angle + 2 * Math.PI * turns - expected)).toBeLessThan(1e-9 /* rad */);
    }
  });
});

describe('swing', () => {
  // The clean flight is subtracted, so that the fall leaves the linear swing alone.
  const ranges = Array.from({ length: 1200 }, (_, i) => 0.5 + i * 0.05);
  const still = conditionsOf(spun(arrow, 0));
  const options = { crossFlow: 0, tolerance: 1e-10 };
  const off = rigidLaunch(level, { ...CLEAN, tailLeft: si(1e-3) });
  const flown = flyRigid(still, off, ranges, options);
  const sideways = flown.map(({ axis, velocity }) => axis[2] / axis[0] - velocity[2] / velocity[0]);
  const closed = swing(arrow, conditions.air.density, 2.5) ?? expect.fail('no swing');
  const zeros = sideways.flatMap((a, i) => {
    const b = sideways[i + 1] ?? 0;
    return a * b < 0 ? [(ranges[i] ?? 0) + (0.05 * a) / (a - b)] : [];
  });

  it('has the wavelength of the closed form, to 0.2 %: the path is 0.1 % longer than the range it covers', () => {
    const [first = 0, ...more] = zeros;
    expect(more.length).toBeGreaterThan(3);
    const wavelength = (2 * ((zeros.at(-1) ?? 0) - first)) / more.length;
    expect(Math.abs(wavelength / closed.wavelength - 1)).toBeLessThan(2e-3 /* relative */);
  });

  it('dies away at the damping length of the closed form, to 0.5 %', () => {
    // Between zeros half a swing apart the curve a = A exp(-x/D) sin repeats, smaller by exp(-half / D).
    const between = (i: number): number =>
      Math.max(
        ...sideways
          .filter((_, k) => (ranges[k] ?? 0) > (zeros[i] ?? 0) && (ranges[k] ?? 0) < (zeros[i + 1] ?? 0))
          .map(Math.abs),
      );
    const halves = zeros.length - 2;
    const damping = (closed.wavelength * halves) / 2 / Math.log(between(0) / between(halves));
    expect(Math.abs(damping / closed.dampingLength - 1)).toBeLessThan(0.005 /* relative */);
  });

  it('the cross-flow on the shaft shortens the damping of a large swing only', () => {
    const peak = (tailLeft: number, crossFlow: number): number => {
      const states = flyRigid(still, rigidLaunch(level, { ...CLEAN, tailLeft: si(tailLeft) }), ranges, {
        crossFlow,
      });
      return (
        Math.max(
          ...states.slice(-400).map(({ axis, velocity }) => Math.abs(axis[2] - velocity[2] / velocity[0])),
        ) / tailLeft
      );
    };
    expect(peak(1e-4, 1.1) / peak(1e-4, 0)).toBeGreaterThan(0.99);
    expect(peak(0.05, 1.1) / peak(0.05, 0)).toBeLessThan(0.92);
  });
});

describe('mirror', () => {
  const disturbed = (sign: number): RigidLaunch =>
    rigidLaunch(
      { ...level, position: [0, -0.1, sign * 0.01], velocity: [84, 5, sign * 0.3] },
      { tailUp: si(0.01), tailLeft: si(sign * 0.02), tailRisingRate: si(0.4), tailLeftRate: si(sign * -0.8) },
      si(sign * 0.6),
    );
  const flown = (sign: number): RigidState =>
    last(
      flyRigid(
        conditionsOf(
          { ...spun(arrow, sign * 4.5), sideForce: 0.5 },
          { wind: { tail: si(1), across: si(sign * 3), up: si(0), shear: 0.2, referenceHeight: si(1.6) } },
        ),
        disturbed(sign),
        yards(20, 60, 100),
        {
          asymmetry: {
            force: [0.1, sign * 0.2],
            firstMoment: [-0.05, sign * -0.07],
            spinPerMetre: si(sign * 0.3),
          },
        },
      ),
    );

  it('everything turned left for right flies as its mirror image, exactly', () => {
    const [right, left] = [flown(1), flown(-1)];
    expect([left.height, left.time, left.axis[1], left.turning[1]]).toEqual([
      right.height,
      right.time,
      right.axis[1],
      right.turning[1],
    ]);
    expect([left.lateral, left.velocity[2], left.spin, left.roll, left.axis[2]]).toEqual(
      [right.lateral, right.velocity[2], right.spin, right.roll, right.axis[2]].map((value) => -value),
    );
  });

  it('without spin, wind across and disturbance the arrow stays in its plane exactly', () => {
    const still = conditionsOf(spun(arrow, 0));
    const state = last(flyRigid(still, rigidLaunch(level, { ...CLEAN, tailUp: si(0.02) }), yards(100)));
    expect(Math.abs(state.lateral)).toBe(0);
    expect(Math.abs(state.axis[2])).toBe(0);
  });
});

describe('beside the everyday model', () => {
  const everyday = last(fly(conditions, level, yards(100)).map((state) => ({ ...clean, ...state })));

  it('drops alike on a clean launch at 100 yd, to 0.5 %', () => {
    expect(Math.abs(at100(clean).height / everyday.height - 1)).toBeLessThan(0.005 /* relative */);
  });

  it('and to 0.1 % from 20 yd on, once the arrow leaves already turning with its path, so that no swing is added', () => {
    const following = { ...clean, turning: [0, -9.80665 / 85.344, 0] as const };
    const ranges = yards(20, 40, 60, 80, 100);
    const rigid = flyRigid(conditions, following, ranges);
    const heights = fly(conditions, level, ranges).map(({ height }) => height);
    for (const [i, height] of heights.entries())
      expect(Math.abs((rigid[i]?.height ?? 0) / height - 1)).toBeLessThan(1e-3 /* relative */);
  });

  it('drifts alike, to 15 %: left for a right helical', () => {
    const rigid = at100(clean, { tolerance: 1e-9 });
    expect(rigid.lateral).toBeLessThan(0);
    expect(Math.abs(rigid.lateral / everyday.lateral - 1)).toBeLessThan(0.15 /* relative */);
  });

  it('drift is odd and linear in the spin, to 1 %', () => {
    const drift = (spin: number): number =>
      last(flyRigid(conditionsOf(spun(arrow, spin)), clean, yards(100), { tolerance: 1e-9 })).lateral;
    expect(Math.abs(drift(9) / drift(4.5) - 2)).toBeLessThan(0.02 /* of the double */);
    expect(drift(-4.5)).toBe(-drift(4.5));
  });

  it('keeps the same spin and time, to 0.1 %', () => {
    const rigid = at100(clean);
    expect(Math.abs(rigid.spin / everyday.spin - 1)).toBeLessThan(1e-3 /* relative */);
    expect(Math.abs(rigid.time / everyday.time - 1)).toBeLessThan(1e-3 /* relative */);
    expect(Math.abs(speedOf(rigid) / speedOf(everyday) - 1)).toBeLessThan(1e-3 /* relative */);
  });

  it('takes a crosswind of 10 mph 0 to 10 % further than an arrow that lies along its airspeed from the start', () => {
    const wind = {
      tail: si<'m/s'>(0),
      across: si<'m/s'>(4.4704),
      up: si<'m/s'>(0),
      shear: 0,
      referenceHeight: si<'m'>(1.6),
    };
    const [settled = []] = flyer({ ...conditions, wind }).states(level, yards(100));
    const simple = settled[STATE.lateral] ?? Number.NaN;
    const rigid = at100(clean, {}, { wind });
    expect(rigid.lateral / simple).toBeGreaterThan(1);
    expect(rigid.lateral / simple).toBeLessThan(1.1);
  });
});

describe('rigidFlyer', () => {
  it('at its tolerance is within 0.1 mm of a flight a thousand times tighter, whatever the start', () => {
    for (const tailUp of [0, 0.01, 0.03]) {
      const launch = rigidLaunch(level, { ...CLEAN, tailUp: si(tailUp), tailLeft: si(tailUp) });
      const [usual, tight] = [at100(launch), at100(launch, { tolerance: 1e-10 })];
      expect(Math.hypot(usual.height - tight.height, usual.lateral - tight.lateral)).toBeLessThan(
        1e-4 /* m */,
      );
    }
  });

  it('is within 0.1 mm of it in wind and at all speeds too, and within 1 mm for the wildest start', () => {
    const wind = { ...calm, tail: si<'m/s'>(-3), across: si<'m/s'>(5) };
    const errors = [50, 70, 85.344].flatMap((speed) =>
      [conditions, conditionsOf(arrow, { wind })].flatMap((there) =>
        [0, 0.02, 0.15].map((tailLeft) => {
          const launch = rigidLaunch(launchFromEye(si(speed), si(0.01)), {
            ...CLEAN,
            tailLeft: si(tailLeft),
          });
          const [usual, tight] = [{}, { tolerance: 1e-9 }].map((options) =>
            last(flyRigid(there, launch, yards(100), options)),
          );
          if (usual === undefined || tight === undefined) return expect.fail();
          return {
            allowed: tailLeft < 0.1 ? 1e-4 : 1e-3, // m
            error: Math.hypot(usual.height - tight.height, usual.lateral - tight.lateral),
          };
        }),
      ),
    );
    expect(errors).toHaveLength(18);
    for (const { error, allowed } of errors) expect(error).toBeLessThan(allowed);
  });

  it('serves one flight after another alike, and counts its evaluations', () => {
    const flight = rigidFlyer(conditions);
    const first = flight.states(clean, yards(50, 100));
    const used = flight.evaluations();
    expect(used).toBeGreaterThan(100);
    expect(flight.states(clean, yards(50, 100))).toEqual(first);
    expect(flight.evaluations()).toBe(2 * used);
  });

  it('arrives where the last step of a stretch is rejected (found by a property on 25 November)', () => {
    const launch = rigidLaunch(launchFromEye(si(50), si(0)), {
      ...CLEAN,
      tailRisingRate: si(1.2987334411239293),
    });
    const stops = [5, 15, 30, 60, 91.44];
    const [usual, tight] = [1e-6, 1e-9].map((tolerance) =>
      last(flyRigid(conditions, launch, stops, { tolerance })),
    );
    expect(Math.abs((usual?.height ?? 0) - (tight?.height ?? 1))).toBeLessThan(1e-4 /* m */);
  });

  it('refuses an arrow whose air takes hold ahead of its balance point', () => {
    const { attitude } = arrow;
    const unstable = { ...arrow, attitude: { ...(attitude ?? expect.fail()), firstMoment: si<'m'>(1) } };
    expect(() => flyRigid(conditionsOf(unstable), clean, [50])).toThrow(/centre of pressure/);
  });

  it('refuses ranges that go back', () => {
    expect(() => rigidFlyer(conditions).states(clean, [50, 20])).toThrow(/rising/);
  });
});
