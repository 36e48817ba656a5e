import { Solver } from 'odex';
import { describe, expect, it } from 'vitest';
import { createIntegrator } from '../../../src/numerics/ode.ts';

/**
 * What ode.ts takes for granted of odex beyond its documented options. Where one of these fails after odex was changed, look at
 * `forget` and `leapOver` in ode.ts before anything else.
 */
const ORDERS = 9;
const options = {
  rawFunction: true,
  denseOutput: false,
  relativeTolerance: 1e-3,
  absoluteTolerance: 1e-3,
  initialStepSize: 0.5,
  maxStepSize: 0,
  maxSteps: Infinity,
};
/** y' = 3 cos 3x: from 0 over 2 the first trial step of 0.5 is refused. */
const wave = (x: number, _: readonly number[], dydx: number[]): void => {
  dydx[0] = 3 * Math.cos(3 * x);
};

describe('odex keeps the best length and the work of a step by order', () => {
  const solver = new Solver(wave, 1, options);
  it('as two lists, one place for each order, the first work being 0', () => {
    expect(solver.hh).toHaveLength(ORDERS);
    expect(solver.w).toHaveLength(ORDERS);
    expect(solver.w[0]).toBe(0);
    solver.hh.fill(Number.POSITIVE_INFINITY);
    solver.solve(0, [0], 2);
    const tried = solver.hh.filter(Number.isFinite);
    expect(tried.length).toBeGreaterThan(0);
    for (const length of tried) expect(length).toBeGreaterThan(0);
  });

  it('and reads a length of an order that it has not tried, without an end where that place is empty', () => {
    let calls = 0;
    const lost = new Solver(
      (x: number, y: readonly number[], dydx: number[]) => {
        calls += 1;
        if (calls > 10_000) throw new RangeError('no end');
        wave(x, y, dydx);
      },
      1,
      options,
    );
    expect(() => lost.solve(0, [0], 2)).toThrow('no end');
  });
});

it('odex asked for twice a length with a longer first step makes the length itself its first step', () => {
  const growth = (_: number, [y = 0]: readonly number[], dydx: number[]): void => {
    dydx[0] = y;
  };
  const solver = new Solver(growth, 1, { ...options, initialStepSize: Number.MAX_VALUE });
  for (const length of [0.3, -0.3, 1e-9, 1 / 3]) {
    const { value: first } = solver.solutionSegments(0, [1], 2 * length).next();
    expect(first?.x1).toBe(length);
  }
});

it('the integrator fills those lists anew: it arrives after a refused step, and to the same bit whatever it did before', () => {
  const made = () =>
    createIntegrator(wave, 1, {
      relativeTolerance: 1e-3,
      absoluteTolerance: 1e-3,
      initialStep: 0.5,
      leap: 1,
    });
  const used = made();
  for (const end of [2, 0.9, 5, 0.4]) {
    const [fresh = Number.NaN] = made().advance(0, [0], end);
    expect(Math.abs(fresh - Math.sin(3 * end))).toBeLessThan(1e-2 /* some ten steps of 1e-3 */);
    expect(used.advance(0, [0], end)).toEqual([fresh]);
  }
});
