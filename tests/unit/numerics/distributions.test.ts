import { describe, expect, it } from 'vitest';
import { chiSquaredSurvival, normalCumulative } from '../../../src/numerics/distributions.ts';

const relative = (found: number, expected: number) => Math.abs(found / expected - 1);
const nonFinite = expect.objectContaining({ code: 'non-finite' });

describe('normal distribution', () => {
  it('has 0.6826894921370859 within one deviation (published to 16 digits, from memory)', () =>
    expect(Math.abs(normalCumulative(1) - normalCumulative(-1) - 0.6826894921370859)).toBeLessThan(
      2e-15 /* the printed digits, and rounding */,
    ));
  it('leaves 0.05 outside 1.959963984540054 (published to 16 digits, from memory)', () =>
    expect(Math.abs(normalCumulative(-1.959963984540054) - 0.025)).toBeLessThan(
      1e-16 /* the printed digits */,
    ));
  it.each([
    [0, 0.5],
    [0.5, 0.69146],
    [0.7, 0.75804],
    [1, 0.84134],
    [2, 0.97725],
    [3, 0.99865],
  ])(
    'has %d and its mirror image where the table has them (Abramowitz and Stegun, table 26.1, from memory)',
    (z, share) => {
      expect(Math.abs(normalCumulative(z) - share)).toBeLessThan(5.1e-6 /* the printed digits */);
      expect(Math.abs(normalCumulative(-z) - (1 - share))).toBeLessThan(5.1e-6 /* the printed digits */);
    },
  );
  it('keeps its digits far out: density/z (1 - 1/z^2 + 3/z^4 - 15/z^6) at -30', () => {
    const z = 30;
    const tail =
      (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / z) * (1 - z ** -2 + 3 * z ** -4 - 15 * z ** -6);
    expect(relative(normalCumulative(-z), tail)).toBeLessThan(105 * z ** -8 + 1e-12 /* the next term */);
  });
});

it('normalCumulative is all or nothing at infinity and refuses NaN', () => {
  expect(normalCumulative(Infinity)).toBe(1);
  expect(normalCumulative(-Infinity)).toBe(0);
  expect(() => normalCumulative(Number.NaN)).toThrow(/the share below NaN/);
});

describe('chiSquaredSurvival', () => {
  it('with two degrees is exp(-x/2)', () =>
    expect(relative(chiSquaredSurvival(7, 2), Math.exp(-3.5))).toBeLessThan(
      1e-14 /* relative: a few roundings */,
    ));
  it('with one is the normal distribution beyond both signs of the root', () =>
    expect(relative(chiSquaredSurvival(2.25, 1), 2 * normalCumulative(-1.5))).toBeLessThan(
      1e-14 /* relative: a few roundings */,
    ));
  it('of nothing is 1', () => expect(chiSquaredSurvival(0, 5)).toBe(1));
  it.each([
    [-1, 3],
    [1, 0],
    [Number.NaN, 3],
  ])('refuses %f with %f degrees', (sum, degrees) =>
    expect(() => chiSquaredSurvival(sum, degrees)).toThrow(nonFinite),
  );
});
