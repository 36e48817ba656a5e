import { at } from './at.ts';
import { normalCumulative } from './distributions.ts';
import { bracketedRoot } from './root.ts';
import { logGamma } from './special-functions.ts';

/** Values are looked at this far from the mean and this close to one another, in standard deviations. */
const REACH = 8;
const STEP = 0.02;

/** The largest less the smallest of n values drawn from one normal distribution, in its standard deviations. */
export interface RangeOfSample {
  readonly mean: number;
  readonly sd: number;
}

/**
 * Mean and standard deviation of the range of n normal values.
 *
 *   E w = ∫ 1 − Φⁿ − (1 − Φ)ⁿ,   E w² = 2 ∬ 1 − Φ(y)ⁿ − (1 − Φ(x))ⁿ + (Φ(y) − Φ(x))ⁿ over x < y
 *
 * by the trapezium rule, which at this step errs by less than 1e-4 along the edge x = y.
 *
 * @param n 2 or more
 * @source Tippett, Biometrika 17 (1925) 364-387
 * @checked reference/distribution-tables — range.csv, the control-chart constants d2 and d3
 */
export function normalRange(n: number): RangeOfSample {
  const count = Math.round((2 * REACH) / STEP);
  const below = Array.from({ length: count + 1 }, (_, i) => normalCumulative(-REACH + i * STEP));
  const high = below.map((share) => share ** n);
  const low = below.map((share) => (1 - share) ** n);
  let [first, second] = [0, 0];
  for (let i = 0; i <= count; i++) {
    first += 1 - at(high, i) - at(low, i);
    // Half of the place x = y itself, the other half of which lies in the mirrored triangle.
    second += (1 - at(high, i) - at(low, i)) / 2;
    for (let j = i + 1; j <= count; j++)
      second += 1 - at(high, j) - at(low, i) + (at(below, j) - at(below, i)) ** n;
  }
  const mean = first * STEP;
  return { mean, sd: Math.sqrt(2 * second * STEP * STEP - mean * mean) };
}

/** A range as a variance: times `factor` and squared it is one of `freedom` degrees of freedom. */
export interface RangeAsVariance {
  readonly factor: number;
  readonly freedom: number;
}

/** Degrees of freedom between which those of a range lie. */
const FREEDOM = { lo: 0.9, hi: 200 } as const;

/**
 * The chi distribution that has the mean and the coefficient of variation of the range of n normal values.
 *
 * @source Patnaik, Biometrika 37 (1950) 78-87
 */
export function rangeAsVariance(n: number): RangeAsVariance {
  const { mean, sd } = normalRange(n);
  const wanted = sd / mean;
  const freedom = bracketedRoot((nu) => chiVariation(nu) - wanted, FREEDOM.lo, FREEDOM.hi, {
    tolerance: 1e-9,
  });
  return { factor: chiMean(freedom) / Math.sqrt(freedom) / mean, freedom };
}

/** Mean of the root of chi squared. */
const chiMean = (freedom: number): number =>
  Math.SQRT2 * Math.exp(logGamma((freedom + 1) / 2) - logGamma(freedom / 2));

const chiVariation = (freedom: number): number =>
  Math.sqrt(freedom - chiMean(freedom) ** 2) / chiMean(freedom);
