import { describe, expect, it } from 'vitest';
import { type Converged, leastSquares } from '../../../src/numerics/least-squares.ts';
import { NumericalError } from '../../../src/numerics/numerical-error.ts';
import { recorded } from './recorded.ts';

const fitted = (...input: Parameters<typeof leastSquares>): Converged => {
  const result = leastSquares(...input);
  if (result.outcome !== 'converged') throw new Error(`failed: ${result.reason}`);
  return result;
};
const squares = (values: readonly number[]) => values.reduce((sum, value) => sum + value ** 2, 0);

/** Straight line through (0, 1), (1, 3), (2, 4), (3, 4): by hand, slope 1, intercept 1.5, residual sum 1. */
const line = ([a = 0, b = 0]: readonly number[]) => [1, 3, 4, 4].map((y, x) => y - a - b * x);
const valley = ([x = 0, y = 0]: readonly number[]) => [10 * (y - x * x), 1 - x];

describe('leastSquares', () => {
  it('fits a straight line as hand arithmetic does, covariance (7/10, -3/10; -3/10, 2/10) included', () => {
    const { parameters, sumOfSquares, covariance } = fitted(line, [0, 0]);
    expect(Math.abs((parameters[0] ?? 0) - 1.5)).toBeLessThan(
      1e-9 /* the parameter tolerance of the solver */,
    );
    expect(Math.abs((parameters[1] ?? 0) - 1)).toBeLessThan(1e-9 /* the parameter tolerance of the solver */);
    expect(Math.abs(sumOfSquares - 1)).toBeLessThan(1e-14 /* rounding */);
    const expected = [
      [0.7, -0.3],
      [-0.3, 0.2],
    ];
    for (const [i, row] of covariance.entries())
      for (const [j, value] of row.entries())
        expect(Math.abs(value - (expected[i]?.[j] ?? 0))).toBeLessThan(
          1e-9 /* the parameter tolerance of the solver */,
        );
  });

  it('finds the end of the curved valley 100 (y - x^2)^2 + (1 - x)^2 from (-1.2, 1)', () => {
    const { parameters, evaluations } = fitted(valley, [-1.2, 1]);
    expect(Math.abs((parameters[0] ?? 0) - 1)).toBeLessThan(1e-9 /* the parameter tolerance of the solver */);
    expect(Math.abs((parameters[1] ?? 0) - 1)).toBeLessThan(1e-9 /* the parameter tolerance of the solver */);
    expect(evaluations).toBeLessThan(150);
  });

  it('counts its calls, and hands back residuals and Jacobian of the place it names', () => {
    const { asked, call } = recorded(line);
    const { parameters, residuals, sumOfSquares, jacobian, evaluations } = fitted(call, [0, 0]);
    expect(evaluations).toBe(asked.length);
    expect(residuals).toEqual(line(parameters));
    expect(sumOfSquares).toBe(squares(residuals));
    expect(jacobian.map((row) => row.map((value) => Math.round(value * 1e6) / 1e6 + 0))).toEqual([
      [-1, 0],
      [-1, -1],
      [-1, -2],
      [-1, -3],
    ]);
  });

  it('treats priors as more residuals: a mean of 10 with sd 1 and 4 with sd 2 is 8.8, sd sqrt(0.8)', () => {
    const { parameters, covariance } = fitted(([m = 0]) => [(10 - m) / 1, (4 - m) / 2], [0]);
    expect(Math.abs((parameters[0] ?? 0) - 8.8)).toBeLessThan(
      1e-9 /* the parameter tolerance of the solver */,
    );
    expect(Math.abs((covariance[0]?.[0] ?? 0) - 0.8)).toBeLessThan(
      1e-9 /* the parameter tolerance of the solver */,
    );
  });

  it('takes the derivatives it is given instead of differences', () => {
    const { asked, call } = recorded(valley);
    const jacobian = ([x = 0]: readonly number[]) => [
      [-20 * x, 10],
      [-1, 0],
    ];
    const { parameters, iterations } = fitted(call, [-1.2, 1], { jacobian });
    expect(Math.abs((parameters[1] ?? 0) - 1)).toBeLessThan(1e-9 /* the parameter tolerance of the solver */);
    expect(asked.length).toBeLessThan(5 * iterations + 5);
  });

  it('does not depend on the units of the parameters', () => {
    const inUnits = ([x = 0, y = 0]: readonly number[]) => valley([x * 1e6, y * 1e-6]);
    const { parameters } = fitted(inUnits, [-1.2e-6, 1e6]);
    expect(Math.abs((parameters[0] ?? 0) * 1e6 - 1)).toBeLessThan(
      1e-9 /* relative: the parameter tolerance of the solver */,
    );
    expect(Math.abs((parameters[1] ?? 0) / 1e6 - 1)).toBeLessThan(
      1e-9 /* relative: the parameter tolerance of the solver */,
    );
  });

  it('converges at once when it starts at the answer', () => {
    expect(fitted(line, [1.5, 1]).iterations).toBeLessThanOrEqual(1);
    expect(fitted(valley, [1, 1]).iterations).toBe(0);
  });

  it('does a warm fit of six data and five priors in 60 calls', () => {
    const truth = [85, 1.13, 0.1185, 1.003, 0.2];
    const prior = [85.6, 1, 0.117, 1, 0];
    const sd = [0.5, 0.15, 0.0025, 0.005, 0.5];
    const reading = ([v = 1, c = 1, h = 0, ratio = 1, offset = 0]: readonly number[], range: number) => {
      const drag = 1.2e-3 * c;
      const time = Math.expm1(drag * range) / (drag * v);
      return (
        offset + ratio * 840 * (h / range + ((9.80665 * time ** 2) / 2 / range) * (1 - (drag * range) / 3))
      );
    };
    const ranges = [18, 27, 36, 45, 55, 73];
    const residuals = (p: readonly number[]) => [
      ...ranges.map((range) => (reading(truth, range) - reading(p, range)) / 0.4),
      ...p.map((value, j) => ((prior[j] ?? 0) - value) / (sd[j] ?? 1)),
    ];
    expect(fitted(residuals, prior, { typical: sd }).evaluations).toBeLessThanOrEqual(60);
  });
});

describe('bounds', () => {
  it('hold a parameter that would leave them, and the others go to the best that is left', () => {
    // With the slope held at 0.5: the intercept is the mean of y - x/2, which is 3 - 0.75.
    const { parameters } = fitted(line, [0, 0], { upper: [Infinity, 0.5] });
    expect(parameters[1]).toBe(0.5);
    expect(Math.abs((parameters[0] ?? 0) - 2.25)).toBeLessThan(
      1e-9 /* the parameter tolerance of the solver */,
    );
  });
  it('let a parameter go again that started on one', () => {
    const { parameters } = fitted(line, [0, 0.5], { lower: [-10, 0.5] });
    expect(Math.abs((parameters[1] ?? 0) - 1)).toBeLessThan(1e-9 /* the parameter tolerance of the solver */);
  });
  it('move a start that lies outside, and nothing outside is ever asked for', () => {
    const { asked, call } = recorded(valley);
    const { parameters } = fitted(call, [-3, 9], {
      lower: [-2, -5],
      upper: [0.5, 5],
    });
    expect(asked.every(([x = 0, y = 0]) => x >= -2 && x <= 0.5 && y >= -5 && y <= 5)).toBe(true);
    expect(Math.abs((parameters[0] ?? 0) - 0.5)).toBeLessThan(
      1e-9 /* the parameter tolerance of the solver */,
    );
    expect(Math.abs((parameters[1] ?? 0) - 0.25)).toBeLessThan(
      1e-9 /* the parameter tolerance of the solver */,
    );
  });
  it('on every parameter at once end the fit there', () =>
    expect(fitted(line, [0, 0], { upper: [0.1, 0.2] }).parameters).toEqual([0.1, 0.2]));
});

describe('a region where the residuals cannot be had', () => {
  it.each([
    ['a NumericalError', () => Number.NaN],
    [
      'NaN',
      (): number => {
        throw new NumericalError('not-bracketed', 'falls short');
      },
    ],
  ])('is stepped around: %s', (_, outside) => {
    // Minimum of (ln x - 1)^2 at e, from a start whose first undamped step goes below 0.
    const { parameters } = fitted(([x = 0]) => [x > 0 ? Math.log(x) - 1 : outside()], [30]);
    expect(Math.abs((parameters[0] ?? 0) - Math.E)).toBeLessThan(1e-8 /* the solver's tolerance */);
  });
});

describe('a fit that fails says why, with the best place found', () => {
  const reason = (...input: Parameters<typeof leastSquares>) => {
    const result = leastSquares(...input);
    return result.outcome === 'failed' ? result.reason : result.outcome;
  };
  it('non-finite: no residuals at the start', () => {
    const result = leastSquares(() => [Number.NaN], [1]);
    expect(result).toMatchObject({
      outcome: 'failed',
      reason: 'non-finite',
      parameters: [1],
      residuals: [],
      evaluations: 1,
    });
  });
  it('singular: a parameter changes nothing', () =>
    expect(reason(([a = 0]) => [a - 1, a + 1], [0, 5])).toBe('singular'));
  it('singular: two parameters do the same', () =>
    expect(reason(([a = 0, b = 0]) => [a + b - 1, 2 * (a + b), a + b], [0, 5])).toBe('singular'));
  it('singular: fewer residuals than parameters', () =>
    expect(reason(([a = 0, b = 0]) => [a + 2 * b - 1], [0, 5])).toBe('singular'));
  it('iterations: the limit is reached', () => {
    const result = leastSquares(valley, [-1.2, 1], { maxIterations: 3 });
    expect(result).toMatchObject({ outcome: 'failed', reason: 'iterations', iterations: 3 });
    expect(result.sumOfSquares).toBeLessThan(squares(valley([-1.2, 1])));
    expect(result.residuals).toEqual(valley(result.parameters));
  });
  it('stuck: derivatives that do not belong to the residuals', () =>
    expect(
      reason(line, [0, 0], {
        jacobian: () => [
          [1, 0],
          [1, 1],
          [1, 2],
          [1, 3],
        ],
      }),
    ).toBe('stuck'));
  it('non-finite: no derivatives at the best place so far, which is handed back', () => {
    const jacobian = (): never => {
      throw new NumericalError('non-finite', 'no derivatives');
    };
    expect(leastSquares(line, [0, 0], { jacobian })).toMatchObject({
      outcome: 'failed',
      reason: 'non-finite',
      parameters: [0, 0],
      residuals: [1, 3, 4, 4],
      jacobian: [],
      evaluations: 1,
      iterations: 0,
    });
  });
  it('an error of derivatives that is not of numerics passes through', () =>
    expect(() =>
      leastSquares(line, [0, 0], {
        jacobian: () => {
          throw new TypeError('a slip');
        },
      }),
    ).toThrow(TypeError));
  it('an error that is not of numerics passes through', () =>
    expect(() =>
      leastSquares(() => {
        throw new TypeError('a slip');
      }, [1]),
    ).toThrow(TypeError));
});

it('residuals that are noisier than rounding still converge when their precision is stated', () => {
  const rough = (p: readonly number[]) => valley(p).map((value) => Math.round(value * 1e9) / 1e9);
  const { parameters } = fitted(rough, [-1.2, 1], { precision: 1e-9 });
  expect(Math.abs((parameters[0] ?? 0) - 1)).toBeLessThan(
    1e-6 /* the noise, a thousand times, as the valley is flat */,
  );
});
