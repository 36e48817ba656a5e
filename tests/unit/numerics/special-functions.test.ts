import { describe, expect, it } from 'vitest';
import { betaShares, gammaShares, logGamma } from '../../../src/numerics/special-functions.ts';

const relative = (found: number, expected: number) => Math.abs(found / expected - 1);
const nonFinite = expect.objectContaining({ code: 'non-finite' });

describe('logGamma', () => {
  it.each([
    ['1/2', 0.5, Math.log(Math.PI) / 2],
    ['1', 1, 0],
    ['2', 2, 0],
    ['5', 5, Math.log(24)],
    ['21', 21, Math.log(2432902008176640000)],
    ['7/2', 3.5, Math.log((15 / 8) * Math.sqrt(Math.PI))],
    ["1e-10, which is ln(1/x) less Euler's constant times x", 1e-10, Math.log(1e10) - 0.5772156649015329e-10],
  ])('of %s', (_, x, expected) =>
    expect(Math.abs(logGamma(x) - expected)).toBeLessThan(1e-14 * Math.max(1, Math.abs(expected))),
  );
  it.each([0, -1.5, Number.NaN, Infinity])('refuses %f', (x) => expect(() => logGamma(x)).toThrow(nonFinite));
});

describe('gammaShares', () => {
  it.each([0.01, 0.5, 1, 3, 40, 700])('with a = 1 is the exponential distribution, at %f', (x) => {
    const { below, above } = gammaShares(1, x);
    expect(relative(above, Math.exp(-x))).toBeLessThan(
      1e-12 /* relative: some hundred roundings of the series */,
    );
    expect(relative(below, -Math.expm1(-x))).toBeLessThan(
      1e-13 /* relative: some hundred roundings of the series */,
    );
  });
  it.each([
    [4, 2.5],
    [4, 9],
    [10, 10.9],
    [10, 11.1],
  ])('with a = %i, whole, is a sum of Poisson chances, at %f', (a, x) => {
    let term = Math.exp(-x);
    let sum = 0;
    for (let k = 0; k < a; k++) {
      sum += term;
      term *= x / (k + 1);
    }
    expect(relative(gammaShares(a, x).above, sum)).toBeLessThan(
      1e-13 /* relative: some hundred roundings of the series */,
    );
  });
  it('at the ends is all or nothing', () => {
    expect(gammaShares(2, 0)).toEqual({ below: 0, above: 1 });
    expect(gammaShares(2, Infinity)).toEqual({ below: 1, above: 0 });
  });
  it.each([
    [0, 1],
    [1, -1],
    [1, Number.NaN],
    [Number.NaN, 1],
  ])('refuses a = %f, x = %f', (a, x) =>
    expect(() => gammaShares(a, x)).toThrow(/incomplete gamma function of/),
  );
});

describe('betaShares', () => {
  /** Chance of at least `a` successes in a + b - 1 trials of chance x, by counting: I_x(a, b) for whole a and b. */
  const counted = (a: number, b: number, x: number): number => {
    const trials = a + b - 1;
    let sum = 0;
    for (let k = a; k <= trials; k++) {
      let ways = 1;
      for (let i = 0; i < k; i++) ways *= (trials - i) / (i + 1);
      sum += ways * x ** k * (1 - x) ** (trials - k);
    }
    return sum;
  };

  it.each([
    [1, 1, 0.3],
    [2, 5, 0.1],
    [2, 5, 0.7],
    [7, 3, 0.2],
    [7, 3, 0.95],
    [12, 9, 0.5],
  ])('of whole numbers is a sum of chances of trials: %d, %d at %d, from either end', (a, b, x) => {
    const { below, above } = betaShares(a, b, x);
    expect(relative(below, counted(a, b, x))).toBeLessThan(1e-12 /* relative: roundings of the sum */);
    expect(relative(above, counted(b, a, 1 - x))).toBeLessThan(1e-12 /* relative: roundings of the sum */);
  });

  it('of 1/2 and 1 is the root, of 1/2 and 1/2 the law of the arcsine', () => {
    expect(relative(betaShares(0.5, 1, 0.09).below, 0.3)).toBeLessThan(1e-13 /* relative */);
    expect(relative(betaShares(0.5, 0.5, 0.75).below, 2 / 3)).toBeLessThan(
      1e-13 /* relative: asin(sqrt(3/4)) is 60 deg */,
    );
  });

  it('at the ends is all or nothing', () => {
    expect(betaShares(2, 3, 0)).toEqual({ below: 0, above: 1 });
    expect(betaShares(2, 3, 1)).toEqual({ below: 1, above: 0 });
  });

  it.each([
    [0, 1, 0.5],
    [-1, 1, 0.5],
    [1, 0, 0.5],
    [1, -1, 0.5],
    [1, 1, -0.1],
    [1, 1, 1.1],
    [1, 1, Number.NaN],
  ])('refuses a = %d, b = %d, x = %d', (a, b, x) =>
    expect(() => betaShares(a, b, x)).toThrow(/incomplete beta function of/),
  );
});
