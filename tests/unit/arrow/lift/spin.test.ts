import { expect, it } from 'vitest';
import {
  bodyInterference,
  dampingInterference,
  forcingInterference,
  spinPerMetre,
  spinUp,
} from '../../../../src/arrow/lift/spin.ts';
import type { TrapezoidFin } from '../../../../src/arrow/lift/trapezoid-fin.ts';

const vane: TrapezoidFin = {
  rootChord: 0.05334,
  tipChord: 0.02286,
  height: 0.0127,
  sweep: 0.03048,
  rootRadius: 0.0031,
};
const angle = Math.PI / 60;

/** Midpoint sum over strips of weight(r) times chord. */
const overStrips = (weight: (r: number) => number): number => {
  const n = 4000;
  let sum = 0;
  for (let i = 0; i < n; i++) {
    const share = (i + 0.5) / n;
    const chord = vane.rootChord + (vane.tipChord - vane.rootChord) * share;
    sum += (weight(vane.rootRadius + share * vane.height) * chord * vane.height) / n;
  }
  return sum;
};

it("at the settled spin the strips' rolling moments cancel, to 1e-6", () => {
  const spin = spinPerMetre(vane, angle);
  const residual = overStrips((r) => (angle - spin * r) * r) / overStrips((r) => angle * r);
  expect(Math.abs(residual)).toBeLessThan(1e-6 /* of the greatest strip's moment */);
});

it("spin grows to it as the strips' damping over the inertia says", () => {
  const inertia = 2.8e-7;
  const [count, slope, density, speed] = [3, 0.98, 1.2, 80];
  // Moment of damping per rad/s: 0.5 rho V N a integral(c r^2 dr); over V and Ix it is one over the length.
  const damping = 0.5 * density * speed * count * slope * overStrips((r) => r * r);
  const length = inertia / (damping / speed);
  expect(spinUp(vane, count, slope, inertia) / density / length).toBeCloseTo(1, 6);
});

it("the damping factor is one plus the body's share of the strips' velocity", () => {
  // integral(c / x^2) / integral(c x) with x = r / rt, the ratio that the closed form stands for.
  const rt = vane.rootRadius;
  const ratio = 1 + overStrips((r) => (rt / r) ** 2) / overStrips((r) => r / rt);
  expect(dampingInterference((vane.height + rt) / rt, vane.tipChord / vane.rootChord) / ratio).toBeCloseTo(
    1,
    6,
  );
});

it('beside very tall fins the body does not matter', () => {
  expect(Math.abs(forcingInterference(1e4) - 1)).toBeLessThan(
    1e-3 /* of the factor: the body is 1e-4 of the span */,
  );
  expect(Math.abs(dampingInterference(1e4, 0.5) - 1)).toBeLessThan(
    1e-3 /* of the factor: the body is 1e-4 of the span */,
  );
});

// reference/roll-interference: worked out from Barrowman's printed equations by a separate script; half of the last digit.
it.each([
  [2, 0.93967],
  [4.0909, 0.93921],
  [10, 0.96275],
])('canted fins of span ratio %d turn the body by %d of what they would alone', (ratio, factor) =>
  expect(Math.abs(forcingInterference(ratio) - factor)).toBeLessThan(5e-6 /* of the factor: its print */),
);

it('rectangular fins as high as the body is thick are damped by 4/3: 1 + 2/(t (t + 1)) at a span ratio of 2', () => {
  const { forcing, damping } = bodyInterference({
    rootChord: 0.04,
    tipChord: 0.04,
    height: 0.003,
    sweep: 0,
    rootRadius: 0.003,
  });
  expect(damping).toBeCloseTo(4 / 3, 14);
  expect(Math.abs(forcing - 0.93967)).toBeLessThan(5e-6 /* of the factor: its print */);
});

it('the body divides the spin by its damping and multiplies it by its forcing, and shortens the spin-up', () => {
  const body = { forcing: 0.9, damping: 1.2 };
  expect(spinPerMetre(vane, angle, body) / spinPerMetre(vane, angle)).toBeCloseTo(0.75, 14);
  expect(spinUp(vane, 3, 1, 3e-7, body) / spinUp(vane, 3, 1, 3e-7)).toBeCloseTo(1 / 1.2, 14);
});

it('the body slows the spin of arrow vanes by a tenth or so', () => {
  const share = spinPerMetre(vane, angle, bodyInterference(vane)) / spinPerMetre(vane, angle);
  expect(share).toBeGreaterThan(0.8);
  expect(share).toBeLessThan(0.95);
});
