import { describe, expect, it } from 'vitest';
import { launchSwing } from '../../../../src/calibration/sideways/launch-swing.ts';
import { at } from '../../../../src/numerics/at.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { spinningRig, withArrow } from '../../advice/invented-bow.ts';
import { inventedRig } from '../../sight/invented-rig.ts';

interface Coefficients {
  readonly K: number;
  readonly k: number;
  readonly M: number;
  readonly C: number;
}

/** Sideways position after `far` metres by fourth-order Runge-Kutta steps of 2 cm: a, w, g, y of the comment's equations. */
function integrated({ K, k, M, C }: Coefficients, start: readonly [number, number], far: number): number {
  const rate = (s: readonly number[]): readonly number[] => {
    const [a, w, g] = [at(s, 0), at(s, 1), at(s, 2)];
    return [(1 + k) * w - K * a, -M * a - C * w, K * a - k * w, g];
  };
  const along = (s: readonly number[], d: readonly number[], h: number) =>
    s.map((value, i) => value + h * at(d, i));
  const steps = Math.round(far / 0.02);
  const h = far / steps;
  let state: readonly number[] = [...start, 0, 0];
  for (let i = 0; i < steps; i++) {
    const s = state;
    const a = rate(s);
    const b = rate(along(s, a, h / 2));
    const c = rate(along(s, b, h / 2));
    const d = rate(along(s, c, h));
    state = s.map((value, j) => value + (h / 6) * (at(a, j) + 2 * at(b, j) + 2 * at(c, j) + at(d, j)));
  }
  return at(state, 3);
}

const agree = (rig: Rig, coefficients: Coefficients): void => {
  const { tailLeft, turning } = launchSwing(rig);
  for (const far of [2, 11, 40]) {
    const [byAngle, byRate] = [integrated(coefficients, [1, 0], far), integrated(coefficients, [0, 1], far)];
    // 1e-6 of itself, and 1e-7 m per radian: the closed form divides what is left of a swing by its decay twice.
    expect(Math.abs(tailLeft(far) - byAngle)).toBeLessThan(1e-7 + 1e-6 * Math.abs(byAngle));
    expect(Math.abs(turning(far) - byRate)).toBeLessThan(1e-7 + 1e-6 * Math.abs(byRate));
  }
};

describe('launchSwing solves the plane motion of a slender arrow', () => {
  it('of known parts', () => {
    // By hand from the figures of the invented arrow: CD 2.5 and a normal-force slope of 30.1 on its cross-section.
    const P = (1.225 * Math.PI * 0.006223 ** 2) / 8;
    const [mass, inertia, first, second] = [
      0.029159509,
      2.002e-3,
      30.1 * 0.355,
      2 * 0.29 ** 2 + 28.1 * 0.4 ** 2,
    ];
    agree(spinningRig, {
      K: (P * (30.1 - 2.5)) / mass,
      k: (-P * first) / mass,
      M: (P * first) / inertia,
      C: (P * second) / inertia - (P * 2.5) / mass,
    });
  });

  it('of which only the mass is known, as the common hunting arrow of reference/rigid-body-figures', () => {
    const common = { K: 0.0176, k: -0.0068, M: 0.0995, C: 0.0434 };
    agree(inventedRig, common);
    const { attitude } = spinningRig.conditions.arrow;
    if (attitude === null) expect.fail();
    // The same for one that nothing keeps straight, whose tail would run away.
    agree(withArrow(spinningRig, { attitude: { ...attitude, firstMoment: si(0.1) } }), common);
    agree(withArrow(spinningRig, { attitude: { ...attitude, firstMoment: si(0) } }), common);
  });

  it('starts at the bow: no way flown, no place to the side', () => {
    const { tailLeft, turning } = launchSwing(spinningRig);
    expect(tailLeft(0)).toBeCloseTo(0, 12 /* m */);
    expect(turning(0)).toBeCloseTo(0, 12 /* m */);
  });
});
