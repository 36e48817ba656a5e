import { describe, expect, it } from 'vitest';
import type { Arrow } from '../../../src/arrow/arrow.ts';
import { STATE } from '../../../src/flight/frame.ts';
import type { Launch } from '../../../src/flight/launch.ts';
import { namedRigidState, RIGID_STATE } from '../../../src/flight/rigid-frame.ts';
import { CLEAN, rigidLaunch, rigidLaunchState } from '../../../src/flight/rigid-launch.ts';
import { rigidMotion } from '../../../src/flight/rigid-motion.ts';
import { add, cross, dot, length, scale, unit, type Vector3 } from '../../../src/numerics/vector.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from './hunting-arrow.ts';
import { conditionsOf, pointArrow } from './point-arrow.ts';
import { type Accelerations, type Motion, stripByStrip } from './strip-by-strip.ts';

function modelled(arrow: Arrow, { velocity, axis, turning, spin }: Motion): Accelerations {
  const state = rigidLaunchState(
    { position: [0, 0, 0], velocity, spin: si(spin), axis, turning, roll: si(0) },
    false,
  );
  const rates = new Array<number>(state.length).fill(0);
  rigidMotion(conditionsOf(arrow.flying))(0, state, rates);
  const perSecond = (i: number): number => (rates[i] ?? Number.NaN) * velocity[0];
  const up = perSecond(RIGID_STATE.turningUp);
  const right = perSecond(RIGID_STATE.turningRight);
  // e . e'' = -|e'|^2, because e stays a unit vector.
  const forward = -(dot(turning, turning) + axis[1] * up + axis[2] * right) / axis[0];
  return {
    velocity: [perSecond(STATE.vx), perSecond(STATE.vy), perSecond(STATE.vz)],
    turning: [forward, up, right],
    spin: perSecond(STATE.spin),
  };
}

const motion = (axis: Vector3, turning: Vector3, spin: number): Motion => {
  const along = unit(axis);
  return {
    velocity: [84, 1.5, -2],
    axis: along,
    turning: add(turning, scale(along, -dot(along, turning))),
    spin,
    roll: 0.7,
  };
};

describe('rigidMotion', () => {
  const strips = { shaftSlowsSpin: false, sideForce: 0.6 };
  const builds = {
    'field point': huntingArrow({ choices: strips }),
    'four vanes': huntingArrow({ count: 4, choices: strips }),
    'blades in front': huntingArrow({ shape: 'fixed_blade', choices: strips }),
  };
  const motions: Record<string, Motion> = {
    'pitched, yawed and swinging': motion([1, 0.05, -0.03], [0, 0.9, -1.4], 330),
    'head on': motion([84, 1.5, -2], [0, 0, 0], 0),
    'swinging fast through its flight': motion([84, 1.6, -2], [0, -3, 2], -200),
  };

  describe.each(Object.entries(builds))('%s', (_build, arrow) => {
    it.each(Object.entries(motions))('%s: equals the sum over strips and slices', (_name, moving) => {
      const ours = modelled(arrow, moving);
      const summed = stripByStrip(arrow, moving);
      const off = (a: Vector3, b: Vector3): number => length(add(a, scale(b, -1)));
      // m/s2: 1e-4 of the drag's; three Gauss points for |w + x e'| over the shaft where it passes through 0.
      expect(off(ours.velocity, summed.velocity)).toBeLessThan(0.004 /* m/s2 */);
      // 1/s2: 3e-4 of what a degree of incidence gives, 12 1/s2; the same points.
      expect(off(ours.turning, summed.turning)).toBeLessThan(0.004 /* 1/s2 */);
      expect(Math.abs(ours.spin - summed.spin)).toBeLessThan(
        1e-4 * 1100 /* rad/s2: strips of 1/400 of the height */,
      );
    });
  });

  it("turns a spinning arrow in a vacuum by Euler: Iy e\" = Ix p e x e' - Iy |e'|^2 e", () => {
    const arrow = huntingArrow();
    const air = { ...conditionsOf(arrow.flying).air, density: si<'kg/m3'>(0) };
    const moving = motion([1, 0.1, -0.2], [0, 2, 3], 400);
    const state = rigidLaunchState({ ...moving, position: [0, 0, 0], spin: si(400), roll: si(0) }, false);
    const rates = new Array<number>(state.length).fill(0);
    rigidMotion(conditionsOf(arrow.flying, { air }))(0, state, rates);
    const { axialInertia = 0, transverseInertia = 1 } = arrow.flying.attitude ?? {};
    const turn = add(
      scale(cross(moving.axis, moving.turning), (axialInertia / transverseInertia) * 400),
      scale(moving.axis, -dot(moving.turning, moving.turning)),
    );
    expect(Math.abs((rates[RIGID_STATE.turningUp] ?? 0) * 84 - turn[1])).toBeLessThan(1e-12 /* 1/s2 */);
    expect(Math.abs((rates[RIGID_STATE.turningRight] ?? 0) * 84 - turn[2])).toBeLessThan(1e-12 /* 1/s2 */);
    expect(Math.abs(rates[STATE.spin] ?? 1)).toBe(0);
  });

  it('refuses an arrow whose inertia is unknown', () => {
    expect(() => rigidMotion(conditionsOf(pointArrow(0.03, 0.006, 2)))).toThrow(/rigid arrow/);
  });
});

describe('rigidLaunch', () => {
  const level: Launch = { position: [0, 0, 0], velocity: [80, 0, 0], spin: si(0) };

  it('clean: the shaft lies along the flight and does not turn', () => {
    const { axis, turning } = rigidLaunch({ ...level, velocity: [80, 6, 1] });
    expect(axis).toEqual(unit([80, 6, 1]));
    expect(length(turning)).toBe(0);
  });

  it('tail left puts the nose right, tail up puts it down, and so do the rates', () => {
    const off = rigidLaunch(level, { ...CLEAN, tailLeft: si(0.02), tailLeftRate: si(1) });
    expect(off.axis[2]).toBeCloseTo(Math.sin(0.02), 15);
    expect(off.turning[2]).toBeCloseTo(Math.cos(0.02) ** 2, 15);
    const high = rigidLaunch(level, { ...CLEAN, tailUp: si(0.02), tailRisingRate: si(1) });
    expect(high.axis[1]).toBeCloseTo(-Math.sin(0.02), 15);
    expect(high.turning[1]).toBeCloseTo(-(Math.cos(0.02) ** 2), 15);
    expect(Math.abs(dot(high.axis, high.turning))).toBeLessThan(1e-16 /* 1/m, rounding */);
  });

  it('refuses an arrow that leaves sideways', () => {
    expect(() => rigidLaunch(level, { ...CLEAN, tailUp: si(0.6) })).toThrow(/below 0.5/);
  });
});

describe('namedRigidState', () => {
  it('gives back the axis and its rate whole', () => {
    const axis = unit([1, 0.2, -0.1]);
    const turning = cross(axis, [0.3, 1, 2]);
    const state = rigidLaunchState(
      { position: [0, 1, 2], velocity: [80, 1, 2], spin: si(3), axis, turning, roll: si(4) },
      true,
    );
    const named = namedRigidState(0, state);
    for (const k of [0, 1, 2] as const) {
      expect(Math.abs(named.axis[k] - axis[k])).toBeLessThan(1e-15 /* rounding */);
      expect(Math.abs(named.turning[k] - turning[k])).toBeLessThan(1e-15 /* rounding */);
    }
    expect([named.height, named.lateral, named.spin, named.roll]).toEqual([1, 2, 3, 4]);
  });
});
