import { describe, expect, it } from 'vitest';
import { normalCumulative } from '../../../src/numerics/distributions.ts';
import {
  chiSquaredQuantile,
  studentQuantile,
  varianceRatioQuantile,
  varianceRatioSurvival,
} from '../../../src/numerics/quantiles.ts';
import { betaShares } from '../../../src/numerics/special-functions.ts';

/** Half of the last digit that the table prints, and rounding. */
const printed = (digits: number): number => 0.5000001 * 10 ** -digits;
const nonFinite = expect.objectContaining({ code: 'non-finite' });

describe("Student's distribution: Abramowitz and Stegun, table 26.10 (values from memory)", () => {
  it.each([
    [0.975, 1, 12.706],
    [0.975, 2, 4.303],
    [0.975, 4, 2.776],
    [0.975, 8, 2.306],
    [0.975, 12, 2.179],
    [0.975, 30, 2.042],
    [0.975, 120, 1.98],
    [0.995, 5, 4.032],
    [0.95, 10, 1.812],
    [0.975, Infinity, 1.96],
  ])('below with chance %f, %d degrees: %f', (share, freedom, place) =>
    expect(Math.abs(studentQuantile(share, freedom) - place)).toBeLessThan(printed(3)),
  );
  it('is the same on either side, and 0 in the middle', () => {
    expect(studentQuantile(0.025, 7)).toBe(-studentQuantile(0.975, 7));
    expect(studentQuantile(0.5, 3)).toBe(0);
  });
  it('with one degree of freedom is the tangent of a uniform angle', () =>
    expect(studentQuantile(0.9, 1)).toBeCloseTo(Math.tan(0.4 * Math.PI), 8));
  it('has no place for a certain chance', () => expect(() => studentQuantile(1, 3)).toThrow(nonFinite));
});

describe('ratio of variances: Abramowitz and Stegun, table 26.9 (values from memory)', () => {
  it.each([
    [0.95, 1, 1, 161.4, 1],
    [0.95, 2, 10, 4.1, 2],
    [0.95, 5, 5, 5.05, 2],
    [0.95, 10, 20, 2.35, 2],
    [0.975, 4, 10, 4.47, 2],
    [0.99, 3, 12, 5.95, 2],
  ])('below with chance %f, %d and %d degrees: %f', (share, above, below, place, digits) =>
    expect(Math.abs(varianceRatioQuantile(share, above, below) - place)).toBeLessThan(printed(digits)),
  );
  it('of two and two degrees leaves 1/(1 + x) above x, by hand', () =>
    expect(varianceRatioSurvival(3, 2, 2)).toBeCloseTo(0.25, 14));
});

describe('chi squared: Abramowitz and Stegun, table 26.8 (values from memory)', () => {
  it.each([
    [0.95, 1, 3.84146],
    [0.99, 1, 6.6349],
    [0.95, 10, 18.307],
    [0.99, 5, 15.0863],
    [0.05, 10, 3.9403],
  ])('below with chance %f, %d degrees: %f', (share, freedom, sum) =>
    expect(Math.abs(chiSquaredQuantile(share, freedom) - sum)).toBeLessThan(printed(4)),
  );
});

describe('places of no distribution', () => {
  const none = (place: () => number) => expect(place, String(place)).toThrow(/no place of a distribution/);
  it.each([0, 1, -0.1, 1.1, Number.NaN])('a share of %d is refused', (share) => {
    none(() => studentQuantile(share, 3));
    none(() => varianceRatioQuantile(share, 3, 4));
    none(() => chiSquaredQuantile(share, 3));
  });
  it.each([0, -1, Number.NaN])('%d degrees of freedom are refused', (freedom) => {
    none(() => studentQuantile(0.9, freedom));
    none(() => varianceRatioQuantile(0.9, freedom, 4));
    none(() => varianceRatioQuantile(0.9, 3, freedom));
    none(() => chiSquaredQuantile(0.9, freedom));
  });
  it('one that lies farther out than numbers go is given up', () =>
    expect(() => varianceRatioQuantile(0.999, 1, 0.01)).toThrow(
      expect.objectContaining({ code: 'not-bracketed' }),
    ));
});

it('the middle of the distribution of two squares is 2 ln 2, to ten digits', () =>
  expect(Math.abs(chiSquaredQuantile(0.5, 2) / (2 * Math.LN2) - 1)).toBeLessThan(1e-9 /* of itself */));

it('what all but a billionth of the squares of four normal numbers stay below has digits too', () => {
  // exp(-x/2) (1 + x/2) = 1e-9.
  const x = chiSquaredQuantile(1 - 1e-9, 4);
  expect(Math.abs((Math.exp(-x / 2) * (1 + x / 2)) / 1e-9 - 1)).toBeLessThan(
    1e-6 /* of the rounding of 1 - 1e-9 */,
  );
});

describe('incomplete beta function', () => {
  it('is x^a for b = 1', () => expect(betaShares(3, 1, 0.4).below).toBeCloseTo(0.064, 15));
  it('gives the chance of 3 or more heads in 7 throws, by counting: 99/128', () =>
    expect(betaShares(3, 5, 0.5).below).toBeCloseTo(99 / 128, 14));
  it('is half at the middle when both parameters are alike', () =>
    expect(betaShares(0.37, 0.37, 0.5).below).toBeCloseTo(0.5, 13));
  it('of one half and one half is the arcsine law', () =>
    expect(betaShares(0.5, 0.5, 0.3).below).toBeCloseTo((2 / Math.PI) * Math.asin(Math.sqrt(0.3)), 14));
  it('refuses x beyond 1', () => expect(() => betaShares(1, 1, 1.1)).toThrow(nonFinite));
});

it('a Student variable of many degrees of freedom is normal', () =>
  expect(normalCumulative(studentQuantile(0.9, 1e7))).toBeCloseTo(0.9, 7));
