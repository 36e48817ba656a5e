import { describe, expect, it } from 'vitest';
import { NumericalError } from '../../../src/numerics/numerical-error.ts';
import { createIntegrator, type Derivative } from '../../../src/numerics/ode.ts';

/** y' = y on one component. */
const growth: Derivative = (_, [y = 0], dydx) => {
  dydx[0] = y;
};
const integratorOf = (derivative: Derivative, dimension = 1) =>
  createIntegrator(derivative, dimension, { initialStep: 0.1 });

const failure = (run: () => unknown): NumericalError => {
  try {
    run();
  } catch (error) {
    if (error instanceof NumericalError) return error;
    throw error;
  }
  throw new Error('did not fail');
};

/** A derivative that is 1 before a place and something else after it. */
const spoilt =
  (value: number, from: number): Derivative =>
  (x, _, dydx) => {
    dydx[0] = x > from ? value : 1;
  };

describe('createIntegrator', () => {
  it.each([
    [0, 1],
    [0, -1],
    [1, 0],
    [-1, 0],
    [-2, 3],
    [5, 5 + 1e-9],
  ])('grows by e to the length from x = %f to %f', (x0, x1) => {
    const [y = 0] = integratorOf(growth).advance(x0, [1], x1);
    expect(Math.abs(y / Math.exp(x1 - x0) - 1)).toBeLessThan(1e-8 /* relative: the tolerance */);
  });

  it('hands the derivative the x of the caller', () => {
    const [y = 0] = integratorOf((x, _, dydx) => {
      dydx[0] = 2 * x;
    }).advance(3, [9], -4);
    expect(Math.abs(y - 16)).toBeLessThan(1e-8 /* the tolerance */);
  });

  it('a tighter tolerance comes nearer', () => {
    const error = (tolerance: number) => {
      const options = { relativeTolerance: tolerance, absoluteTolerance: tolerance, initialStep: 0.1 };
      const [y = 0] = createIntegrator(growth, 1, options).advance(0, [1], 5);
      return Math.abs(y / Math.exp(5) - 1);
    };
    expect(error(1e-3)).toBeLessThan(1e-3 /* the tolerance asked for */);
    expect(error(1e-12)).toBeLessThan(1e-12 /* the tolerance asked for */);
    expect(error(1e-12)).toBeLessThan(error(1e-3));
  });

  it('over no length returns a copy of the state and calls nothing', () => {
    const integrator = integratorOf(growth);
    const start = [1];
    const end = integrator.advance(2, start, 2);
    expect(end).toEqual([1]);
    expect(end).not.toBe(start);
    expect(integrator.evaluations()).toBe(0);
  });

  it("leaves the starting state as it was, and hands out a state that is the caller's own", () => {
    const integrator = integratorOf(growth);
    const start = Object.freeze([1]);
    const first = integrator.advance(0, start, 1);
    const kept = [...first];
    integrator.advance(0, [7], 1);
    expect(first).toEqual(kept);
    expect(start).toEqual([1]);
  });

  it('can be used again, with the result of a new one', () => {
    const used = integratorOf(growth);
    used.advance(0, [3], 4);
    expect(used.advance(0, [1], 1)).toEqual(integratorOf(growth).advance(0, [1], 1));
  });

  it('holds each component to its own tolerance: a slack one neither sets the steps nor spoils the others', () => {
    // One slow component, y = e^x, and one that goes round seven times: sin 44 x.
    const both: Derivative = (x, [y = 0], dydx) => {
      dydx[0] = y;
      dydx[1] = 44 * Math.cos(44 * x);
    };
    const fly = (second: number) => {
      const tolerances = [1e-9, second];
      const integrator = createIntegrator(both, 2, {
        relativeTolerance: tolerances,
        absoluteTolerance: tolerances,
        initialStep: 0.1,
      });
      const [slow = Number.NaN, round = Number.NaN] = integrator.advance(0, [1, 0], 1);
      return {
        slow: Math.abs(slow - Math.E),
        round: Math.abs(round - Math.sin(44)),
        calls: integrator.evaluations(),
      };
    };
    const [strict, slack] = [fly(1e-9), fly(1e-3)];
    expect(strict.round).toBeLessThan(1e-8 /* some ten steps of 1e-9 */);
    expect(slack.round).toBeLessThan(1e-2 /* some ten steps of 1e-3 */);
    expect(slack.slow).toBeLessThan(1e-8 /* some ten steps of 1e-9 (1 + y) */);
    expect(slack.calls).toBeLessThan(0.7 * strict.calls /* calls */);
  });

  describe('tries an advance no longer than its leap as one step', () => {
    const leaping = (leap: number) =>
      createIntegrator(growth, 1, {
        relativeTolerance: 1e-9,
        absoluteTolerance: 1e-9,
        initialStep: 0.1,
        leap,
      });

    it.each([
      [0, 0.5],
      [2, 1.5],
      [-0.25, 0.25],
    ])('from x = %f to %f: as near, with fewer calls', (x0, x1) => {
      const [leaper, walker] = [leaping(0.5), leaping(0)];
      const [y = Number.NaN] = leaper.advance(x0, [1], x1);
      walker.advance(x0, [1], x1);
      expect(Math.abs(y - Math.exp(x1 - x0))).toBeLessThan(2e-9 /* 1e-9 (1 + y) a step */);
      expect(leaper.evaluations()).toBeLessThan(0.7 * walker.evaluations() /* calls */);
    });

    it('and a longer one as without', () =>
      expect(leaping(0.5).advance(0, [1], 0.51)).toEqual(leaping(0).advance(0, [1], 0.51)));

    it('and makes shorter steps where that one is refused', () => {
      const wave: Derivative = (x, _, dydx) => {
        dydx[0] = 40 * Math.cos(40 * x);
      };
      const integrator = createIntegrator(wave, 1, {
        relativeTolerance: 1e-9,
        absoluteTolerance: 1e-9,
        initialStep: 0.1,
        leap: 3,
      });
      const [y = Number.NaN] = integrator.advance(-1, [0], 2);
      expect(Math.abs(y - (Math.sin(80) + Math.sin(40)))).toBeLessThan(1e-7 /* some fifty steps of 1e-9 */);
    });
  });

  it('makes no step longer than the longest, and so sees what happens in between', () => {
    // A bump of height 1 and a hundredth of width in a way of ten, the rest of which is flat.
    const bump: Derivative = (x, _, dydx) => {
      dydx[0] = x > 6.3 && x < 6.31 ? 100 * (1 - Math.abs(x - 6.305) / 0.005) : 0;
    };
    const area = (longestStep?: number): number => {
      const options = { initialStep: 1, ...(longestStep === undefined ? {} : { longestStep }) };
      const [y = Number.NaN] = createIntegrator(bump, 1, options).advance(0, [0], 10);
      return y;
    };
    expect(area()).toBe(0);
    expect(Math.abs(area(0.005) - 0.5)).toBeLessThan(
      1e-6 /* relative to 1: kinks cost some digits of 1e-8 */,
    );
  });

  it('counts every call, over all advances', () => {
    let calls = 0;
    const integrator = integratorOf((x, y, dydx) => {
      calls += 1;
      growth(x, y, dydx);
    });
    integrator.advance(0, [1], 1);
    const once = calls;
    integrator.advance(0, [1], 1);
    expect(integrator.evaluations()).toBe(calls);
    expect(calls).toBe(2 * once);
  });
});

describe('an advance that cannot arrive says so, and where', () => {
  it.each([
    ['NaN near the end', spoilt(Number.NaN, 0.9)],
    ['NaN everywhere', spoilt(Number.NaN, -1)],
    ['Infinity part of the way', spoilt(Infinity, 0.5)],
    ['-Infinity part of the way', spoilt(-Infinity, 0.5)],
  ])('a derivative of %s, within 100 ms', (_, derivative) => {
    const before = performance.now();
    const error = failure(() => integratorOf(derivative).advance(0, [0], 1));
    expect(performance.now() - before).toBeLessThan(100 /* ms; without a guard it never ends */);
    expect(error.code).toBe('non-finite');
    expect(error.at).toBeGreaterThanOrEqual(0);
    expect(error.at).toBeLessThanOrEqual(1 /* the end of the interval */);
  });

  it('a derivative that misses a component', () =>
    expect(failure(() => integratorOf(() => {}).advance(0, [0], 1)).code).toBe('non-finite'));

  it('a solution that runs away at x = 1', () => {
    const error = failure(() =>
      integratorOf((_, [y = 0], dydx) => {
        dydx[0] = y * y;
      }).advance(0, [1], 2),
    );
    expect(['non-finite', 'too-many-evaluations']).toContain(error.code);
    expect(Math.abs((error.at ?? 0) - 1)).toBeLessThan(0.1 /* of the interval */);
  });

  it('a solution that takes more evaluations than allowed', () => {
    const fast: Derivative = (x, _, dydx) => {
      dydx[0] = 1e4 * Math.cos(1e4 * x);
    };
    const integrator = createIntegrator(fast, 1, { initialStep: 0.1, maxEvaluations: 1000 });
    const error = failure(() => integrator.advance(0, [0], 1));
    expect(error.code).toBe('too-many-evaluations');
    expect(integrator.evaluations()).toBeLessThan(1000 + 32 /* looked at every 32 calls */);
  });

  it.each([
    ['NaN to go to', 0, [1], Number.NaN],
    ['no end', 0, [1], Infinity],
    ['a NaN state', 0, [Number.NaN], 1],
    ['too long a state', 0, [1, 2], 1],
    ['no state', 0, [], 1],
  ])('%s', (_, x0, y0, x1) =>
    expect(failure(() => integratorOf(growth).advance(x0, y0, x1)).code).toBe('non-finite'),
  );

  it('an error of the derivative passes through, and the integrator works after it', () => {
    let broken = true;
    const integrator = integratorOf((x, y, dydx) => {
      if (broken) throw new RangeError('below ground');
      growth(x, y, dydx);
    });
    expect(() => integrator.advance(0, [1], 1)).toThrow(RangeError);
    broken = false;
    expect(integrator.advance(0, [1], 1)).toEqual(integratorOf(growth).advance(0, [1], 1));
  });
});
