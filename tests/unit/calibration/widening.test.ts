import { describe, expect, it } from 'vitest';
import { scatterOf } from '../../../src/calibration/widening.ts';
import { chiSquaredSurvival } from '../../../src/numerics/distributions.ts';

/** The sum of squares that has a chance of 5 % with six measurements. @source table of chi-squared: 12.59 */
const AT_5_PERCENT = 12.59;

describe('scatterOf', () => {
  it('has its chance from the distribution of chi-squared', () =>
    expect(Math.abs(scatterOf(AT_5_PERCENT, 6).chance - 0.05)).toBeLessThan(5e-5 /* the printed digits */));

  it.each([0, 2, 6])(
    'does not widen where the sum of squares is %d with six measurements: no more than expected',
    (sum) => expect(scatterOf(sum, 6).widening).toBe(1),
  );

  it('widens by the root of chi-squared over its expectation where chance cannot explain it', () =>
    expect(Math.abs(scatterOf(60, 6).widening / Math.sqrt(10) - 1)).toBeLessThan(1e-6 /* relative */));

  it.each([
    // With two measurements p = exp(-x/2) and p_n = exp(-1): of a sum of 6, (1 - exp(-2))^2 = 0.747645 of the ratio 3 - 1 is
    // taken.
    [6, 2, Math.sqrt(1 + 2 * 0.747645)],
    // With four p = exp(-x/2) (1 + x/2): of 12, 7 exp(-6) / (3 exp(-2)) = 0.0427365, so 0.916353 of the ratio 3 - 1.
    [12, 4, Math.sqrt(1 + 2 * 0.916353)],
  ])('of %d with %d measurements is as by hand', (sum, count, widening) =>
    expect(Math.abs(scatterOf(sum, count).widening - widening)).toBeLessThan(1e-6 /* the digits above */),
  );

  it('nowhere jumps: a hundredth more of the sum of squares widens by at most a hundredth', () => {
    for (let sum = 3; sum < 40; sum *= 1.01) {
      const [before, after] = [scatterOf(sum, 6).widening, scatterOf(1.01 * sum, 6).widening];
      expect(after).toBeGreaterThanOrEqual(before);
      expect(after / before).toBeLessThan(1.01);
    }
  });

  it('at 5 % stands between 1 and the ratio that was used from there on', () => {
    const { widening } = scatterOf(AT_5_PERCENT, 6);
    expect(widening).toBeGreaterThan(1.2);
    expect(widening).toBeLessThan(Math.sqrt(AT_5_PERCENT / 6));
  });

  it('on average widens what is as stated by little: under 8 % of the error with six measurements', () => {
    // The mean over the distribution, by its quantiles.
    const shares = Array.from({ length: 400 }, (_, i) => (i + 0.5) / 400);
    const mean =
      shares.reduce((total, share) => total + scatterOf(quantile(share, 6), 6).widening, 0) / shares.length;
    expect(mean).toBeLessThan(1.08);
  });

  it('without measurements there is nothing to judge', () =>
    expect(scatterOf(0, 0)).toEqual({ chance: 1, widening: 1 }));
});

function quantile(above: number, count: number): number {
  let [lo, hi] = [0, 100];
  for (let i = 0; i < 60; i += 1) {
    const middle = (lo + hi) / 2;
    if (chiSquaredSurvival(middle, count) > above) lo = middle;
    else hi = middle;
  }
  return lo;
}
