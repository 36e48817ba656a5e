import { describe, expect, it } from 'vitest';
import { createEqualSteps } from '../../../src/numerics/equal-steps.ts';
import { NumericalError } from '../../../src/numerics/numerical-error.ts';
import type { Derivative } from '../../../src/numerics/ode.ts';

const growth: Derivative = (_, [y = 0], dydx) => {
  dydx[0] = y;
};
const grown = (x0: number, x1: number, longest: number): number => {
  const [y = Number.NaN] = createEqualSteps(growth, 1, longest).advance(x0, [1], x1);
  return y;
};

describe('createEqualSteps', () => {
  it('over one step of 1 makes 1 + 1 + 1/2 + 1/6 + 1/24 of y = e^x', () =>
    expect(Math.abs(grown(0, 1, 1) - 65 / 24)).toBeLessThan(1e-15 /* rounding */));

  it.each([
    [0, 2],
    [3, 1],
  ])('from %f to %f is of fourth order: half the step, a sixteenth of the error', (x0, x1) => {
    const exact = Math.exp(x1 - x0);
    const [coarse, fine] = [0.1, 0.05].map((longest) => grown(x0, x1, longest) - exact);
    expect(Math.abs((coarse ?? 0) / (fine ?? 0) - 16)).toBeLessThan(
      1 /* the next order's share of steps of 0.1 */,
    );
  });

  it('hands the derivative the x of the caller, and integrates a cubic exactly', () => {
    const cubic: Derivative = (x, _, dydx) => {
      dydx[0] = 4 * x ** 3;
    };
    const [y = Number.NaN] = createEqualSteps(cubic, 1, 10).advance(-1, [1], 3);
    expect(Math.abs(y - 81)).toBeLessThan(1e-12 /* rounding of 81 */);
  });

  it('makes as few steps as are no longer than the longest, of four calls each', () => {
    const integrator = createEqualSteps(growth, 1, 0.3);
    integrator.advance(0, [1], 0.9);
    expect(integrator.evaluations()).toBe(4 * 3);
    integrator.advance(0, [1], 1);
    expect(integrator.evaluations()).toBe(4 * 3 + 4 * 4);
  });

  it('leaves the start as it was, and over no length returns it', () => {
    const start = Object.freeze([2]);
    const integrator = createEqualSteps(growth, 1, 1);
    expect(integrator.advance(1, start, 1)).toEqual([2]);
    integrator.advance(1, start, 2);
    expect(start).toEqual([2]);
  });

  it('keeps the difference of two neighbouring solutions as exact as one of them', () => {
    const integrator = createEqualSteps(growth, 1, 0.5);
    const at = (y0: number): number => integrator.advance(0, [y0], 2)[0] ?? Number.NaN;
    const slope = (at(1 + 1e-6) - at(1)) / 1e-6;
    expect(Math.abs(slope / at(1) - 1)).toBeLessThan(1e-8 /* rounding over 1e-6 */);
  });

  it('says so when the end is not finite', () => {
    const runaway: Derivative = (_, [y = 0], dydx) => {
      dydx[0] = Math.exp(y);
    };
    expect(() => createEqualSteps(runaway, 1, 1).advance(0, [10], 50)).toThrow(NumericalError);
  });
});

it('is exact where the slope is a third power of the place alone, forwards and back: x^4/4', () => {
  const { advance } = createEqualSteps<readonly [number]>(
    (x, _, slope) => {
      slope[0] = x ** 3;
    },
    1,
    0.7,
  );
  expect(advance(1, [5], 3)[0]).toBeCloseTo(25, 12);
  expect(advance(3, [25], 1)[0]).toBeCloseTo(5, 12);
});

it('says where a state of several is not finite any more, though the others are', () => {
  const { advance } = createEqualSteps<readonly [number, number]>(
    (_, [y], slope) => {
      slope[0] = y > 2 ? Number.NaN : 1;
      slope[1] = 0;
    },
    2,
    1,
  );
  expect(() => advance(0, [0, 0], 9)).toThrow(expect.objectContaining({ code: 'non-finite' }));
});
