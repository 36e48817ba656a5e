import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { barycentricWeights, chebyshevNodes, interpolateAt } from '../../src/numerics/chebyshev.ts';
import { monotoneCubic, uniformCubic } from '../../src/numerics/interpolate.ts';
import { leastSquares } from '../../src/numerics/least-squares.ts';
import { inverseSymmetric } from '../../src/numerics/linear-algebra.ts';
import { createIntegrator, type Derivative } from '../../src/numerics/ode.ts';
import { integrate } from '../../src/numerics/quadrature.ts';
import { randomStream } from '../../src/numerics/random.ts';
import { bracketedRoot, minimumOf } from '../../src/numerics/root.ts';
import { cross, dot, length, rotate, subtract, unit, type Vector3 } from '../../src/numerics/vector.ts';

const SEED = { seed: 20_240_608 };
const number = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const vector = fc.tuple(number(-10, 10), number(-10, 10), number(-10, 10));
const axis = vector.filter((v) => length(v) > 0.1).map(unit);
const squares = (values: readonly number[]) => values.reduce((sum, value) => sum + value * value, 0);

describe('vectors', () => {
  const gap = (a: Vector3, b: Vector3) => length(subtract(a, b));
  it('turning keeps lengths and angles, and two turns add', () => {
    fc.assert(
      fc.property(vector, vector, axis, number(-7, 7), number(-7, 7), (v, w, n, a, b) => {
        const allowed = 1e-12; // lengths up to 17, squared 300, rounded a few times
        expect(Math.abs(dot(rotate(v, n, a), rotate(w, n, a)) - dot(v, w))).toBeLessThan(allowed);
        expect(gap(rotate(rotate(v, n, a), n, b), rotate(v, n, a + b))).toBeLessThan(allowed);
        expect(gap(rotate(rotate(v, n, a), n, -a), v)).toBeLessThan(allowed);
      }),
      SEED,
    );
  });
  it('the cross product is square to both, and its length squared with the dot product gives both lengths', () => {
    fc.assert(
      fc.property(vector, vector, (v, w) => {
        const c = cross(v, w);
        expect(Math.abs(dot(c, v))).toBeLessThan(1e-11 /* rounding of products of components up to 100 */);
        expect(Math.abs(dot(c, c) + dot(v, w) ** 2 - dot(v, v) * dot(w, w))).toBeLessThan(
          1e-9 /* of up to 9e4 */,
        );
      }),
      SEED,
    );
  });
});

describe('integration', () => {
  /** A pendulum with friction: not linear, no closed form. */
  const pendulum: Derivative = (_, [angle = 0, rate = 0], dydx) => {
    dydx[0] = rate;
    dydx[1] = -4 * Math.sin(angle) - 0.1 * rate;
  };
  const solver = (tolerance: number) =>
    createIntegrator(pendulum, 2, {
      relativeTolerance: tolerance,
      absoluteTolerance: tolerance,
      initialStep: 0.1,
    });
  const farthest = (a: readonly number[], b: readonly number[]) =>
    Math.max(...a.map((x, i) => Math.abs(x - (b[i] ?? 0))));
  /** Near its top the pendulum falls away at a rate of 2, which grows an error by e^6 over a span of 3. */
  const GROWTH = Math.exp(6);
  const start = fc.tuple(number(-2, 2), number(-3, 3));

  it('there and back, or in two stages, is the same to the tolerance, grown as the pendulum grows it', () => {
    const { advance } = solver(1e-10);
    fc.assert(
      fc.property(start, number(-3, 3), number(0.1, 3), (y0, x0, span) => {
        const whole = advance(x0, y0, x0 + span);
        expect(farthest(advance(x0 + span, whole, x0), y0)).toBeLessThan(1e-10 * GROWTH);
        expect(
          farthest(advance(x0 + span / 3, advance(x0, y0, x0 + span / 3), x0 + span), whole),
        ).toBeLessThan(1e-10 * GROWTH);
      }),
      { ...SEED, numRuns: 50 },
    );
  });
  it('a tolerance ten times tighter moves the end by less than the tolerance, grown as the pendulum grows it', () => {
    const [loose, tight] = [solver(1e-6), solver(1e-7)];
    fc.assert(
      fc.property(start, (y0) => {
        expect(farthest(loose.advance(0, y0, 3), tight.advance(0, y0, 3))).toBeLessThan(1e-6 * GROWTH);
      }),
      { ...SEED, numRuns: 50 },
    );
  });
  it('a quadrature of two parts is that of the whole', () => {
    fc.assert(
      fc.property(number(-2, 2), number(-2, 2), number(-2, 2), (a, b, c) => {
        const area = (lo: number, hi: number) => integrate((x) => Math.cos(2 * x) + x ** 3, lo, hi, 20);
        expect(Math.abs(area(a, b) + area(b, c) - area(a, c))).toBeLessThan(
          1e-13 /* rounding of areas of a few units */,
        );
      }),
      SEED,
    );
  });
});

describe('one variable', () => {
  it('a root lies within the tolerance of where the sign changes', () => {
    fc.assert(
      fc.property(number(-3, 3), number(0, 5), number(-8, -3.1), number(3.1, 8), (root, bend, lo, hi) => {
        const f = (x: number) => Math.sinh(x - root) + bend * (x - root) ** 3;
        expect(Math.abs(bracketedRoot(f, lo, hi, { tolerance: 1e-10 }) - root)).toBeLessThan(
          1.1e-10 /* the tolerance asked for and a tenth */,
        );
      }),
      SEED,
    );
  });
  it('a minimum lies within the tolerance of the lowest place', () => {
    fc.assert(
      fc.property(number(-3, 3), number(0.5, 5), number(-8, -3.1), number(3.1, 8), (place, bend, lo, hi) => {
        const f = (x: number) => bend * (x - place) ** 2 + 0.1 * (x - place) ** 4;
        expect(Math.abs(minimumOf(f, lo, hi, { tolerance: 1e-6 }) - place)).toBeLessThan(
          1.1e-6 /* the tolerance asked for and a tenth */,
        );
      }),
      SEED,
    );
  });
});

describe('interpolation', () => {
  const values = fc.array(number(-5, 5), { minLength: 2, maxLength: 12 });

  it('a monotone table rises wherever its points rise', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number(0.01, 3), number(0, 4)), { minLength: 2, maxLength: 10 }),
        (steps) => {
          const running = (k: 0 | 1) =>
            steps.map((_, i) => steps.slice(0, i + 1).reduce((sum, step) => sum + step[k], 0));
          const [xs, ys] = [running(0), running(1)];
          const table = monotoneCubic(xs, ys);
          const [lo = 0, hi = 0] = [xs[0], xs.at(-1)];
          const read = Array.from({ length: 301 }, (_, i) => table(lo + ((hi - lo) * i) / 300));
          expect(
            read.every((y, i) => y >= (read[i - 1] ?? -Infinity) - 1e-12 /* rounding of values up to 40 */),
          ).toBe(true);
        },
      ),
      SEED,
    );
  });
  it('a uniform spline passes through its values and stays finite everywhere', () => {
    fc.assert(
      fc.property(values, number(-3, 3), number(0.01, 2), number(-1e3, 1e3), (ys, x0, step, x) => {
        const spline = uniformCubic(x0, step, ys);
        for (const [i, y] of ys.entries())
          expect(Math.abs(spline(x0 + i * step) - y)).toBeLessThan(
            1e-10 /* rounding of values far larger than 1 */,
          );
        expect(Number.isFinite(spline(x))).toBe(true);
      }),
      SEED,
    );
  });
  it('Chebyshev interpolation is exact for every polynomial of its degree', () => {
    fc.assert(
      fc.property(values, number(-3, 3), number(0.1, 4), number(0, 1), (coefficients, lo, width, share) => {
        const polynomial = (x: number) =>
          coefficients.reduceRight((sum, c) => sum * ((x - lo) / width) + c, 0);
        const n = coefficients.length;
        const nodes = chebyshevNodes(n, lo, lo + width);
        const x = lo + share * width;
        const found = interpolateAt(nodes, barycentricWeights(n), nodes.map(polynomial), x);
        expect(Math.abs(found - polynomial(x))).toBeLessThan(1e-11 /* rounding of sums of powers */);
      }),
      SEED,
    );
  });
});

describe('least squares', () => {
  const truth = [3, 0.4, 0.5];
  /** Small enough for the model to be straight over the errors that it causes. */
  const SD = 0.02;
  const model = ([a = 0, b = 0, c = 0]: readonly number[], x: number) => a * Math.exp(-b * x) + c;
  const noisy = (seed: number) => {
    const { normal } = randomStream(99, seed);
    return Array.from({ length: 25 }, (_, i) => ({ x: i / 3, y: model(truth, i / 3) + SD * normal() }));
  };
  const fitTo = (points: readonly { x: number; y: number }[], units = [1, 1, 1]) => {
    const inUnits = (p: readonly number[]) => p.map((value, j) => value * (units[j] ?? 1));
    const residuals = (p: readonly number[]) => points.map(({ x, y }) => (y - model(inUnits(p), x)) / SD);
    const result = leastSquares(
      residuals,
      [1, 1, 0.1].map((value, j) => value / (units[j] ?? 1)),
    );
    if (result.outcome !== 'converged') throw new Error(result.reason);
    return { values: inUnits(result.parameters), ...result };
  };

  it('recovers known parameters from noisy data, each within its own error as often as errors say', () => {
    const pulls = Array.from({ length: 200 }, (_, seed) => {
      const { values, covariance } = fitTo(noisy(seed));
      return values.map((value, j) => (value - (truth[j] ?? 0)) / Math.sqrt(covariance[j]?.[j] ?? 0));
    }).flat();
    // 4 would be exceeded by one set of 600 normal pulls in 25, 5 by one in 3000.
    expect(Math.max(...pulls.map(Math.abs))).toBeLessThan(5 /* standard errors */);
    // 600 pulls of unit variance: their mean square is 1 with a deviation of 0.06, a little more for being correlated.
    expect(Math.abs(squares(pulls) / pulls.length - 1)).toBeLessThan(0.25 /* relative */);
  });
  it('does not care for the order of the points or the units of the parameters', () => {
    const order = fc.shuffledSubarray([...noisy(0).keys()], { minLength: 25 });
    const power = fc.integer({ min: -6, max: 6 }).map((k) => 10 ** k);
    const expected = fitTo(noisy(0)).values;
    fc.assert(
      fc.property(order, fc.tuple(power, power, power), (places, units) => {
        const points = noisy(0);
        const { values } = fitTo(
          places.map((i) => points[i] ?? { x: 0, y: 0 }),
          units,
        );
        for (const [j, value] of values.entries())
          expect(Math.abs(value / (expected[j] ?? 0) - 1)).toBeLessThan(
            1e-7 /* the gradient test, in standard errors, is 1e-8 */,
          );
      }),
      { ...SEED, numRuns: 30 },
    );
  });
  it('within bounds does as well as the best of all ways to hold parameters at them', () => {
    const row = fc.tuple(number(-2, 2), number(-2, 2), number(-5, 5));
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 4, maxLength: 6 }),
        number(-1, 0),
        number(0.2, 1),
        (rows, low, high) => {
          const residuals = ([a = 0, b = 0]: readonly number[]) => rows.map(([p, q, r]) => r + p * a + q * b);
          fc.pre(conditioned(rows));
          const result = leastSquares(residuals, [0, 0], { lower: [low, low], upper: [high, high] });
          expect(result.outcome).toBe('converged');
          const within = (value: number) => Math.min(Math.max(value, low), high);
          // Convex, so the best on each edge and the corners, by hand, with the free minimum where it lies inside.
          const [aa, ab, bb, ar, br] = sums(rows);
          const onEdge = [low, high].flatMap((held) => [
            [held, within(-(br + ab * held) / bb)],
            [within(-(ar + ab * held) / aa), held],
          ]);
          const determinant = aa * bb - ab * ab;
          const free = [(ab * br - bb * ar) / determinant, (ab * ar - aa * br) / determinant];
          const candidates = free.every((value) => value > low && value < high) ? [free] : onEdge;
          const best = Math.min(...candidates.map((place) => squares(residuals(place))));
          expect(result.sumOfSquares).toBeLessThanOrEqual(best * (1 + 1e-9) + 1e-12);
          expect(result.parameters.every((value) => value >= low && value <= high)).toBe(true);
        },
      ),
      { ...SEED, numRuns: 300 },
    );
  });
  it('a symmetric matrix times its inverse is the identity', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(number(-2, 2), number(-2, 2), number(-2, 2)), { minLength: 5, maxLength: 8 }),
        (rows) => {
          const A = [0, 1, 2].map((i) =>
            [0, 1, 2].map((j) => rows.reduce((sum, row) => sum + at(row, i) * at(row, j), i === j ? 0.1 : 0)),
          );
          const inverse = inverseSymmetric(A);
          const product = A.map((row) =>
            [0, 1, 2].map((j) => row.reduce((sum, a, k) => sum + a * (inverse[k]?.[j] ?? 0), 0)),
          );
          // Condition at most 96/0.1 by the ridge of 0.1.
          for (const [i, row] of product.entries())
            for (const [j, value] of row.entries())
              expect(Math.abs(value - (i === j ? 1 : 0))).toBeLessThan(
                1e-12 /* rounding, times the condition of the matrix */,
              );
        },
      ),
      SEED,
    );
  });
});

type Row3 = readonly [number, number, number];
const at = (row: Row3, i: number): number => row[i] ?? 0;
/** Sums of products of the columns a, b and r. */
const sums = (rows: readonly Row3[]): readonly [number, number, number, number, number] => {
  const sum = (i: number, j: number) => rows.reduce((total, row) => total + at(row, i) * at(row, j), 0);
  return [sum(0, 0), sum(0, 1), sum(1, 1), sum(0, 2), sum(1, 2)];
};
const conditioned = (rows: readonly Row3[]): boolean => {
  const [aa, ab, bb] = sums(rows);
  return aa > 0.1 && bb > 0.1 && ab * ab < 0.99 * aa * bb;
};
