import { expect, it } from 'vitest';
import { normalRange, rangeAsVariance } from '../../../src/numerics/normal-range.ts';

/** Control-chart constants d2 and d3, as any handbook of statistical quality control prints them (from memory). */
const PRINTED: readonly (readonly [n: number, d2: number, d3: number])[] = [
  [2, 1.128, 0.853],
  [3, 1.693, 0.888],
  [4, 2.059, 0.88],
  [5, 2.326, 0.864],
  [6, 2.534, 0.848],
  [7, 2.704, 0.833],
  [8, 2.847, 0.82],
  [9, 2.97, 0.808],
  [10, 3.078, 0.797],
  [25, 3.931, 0.708],
];
const HALF_DIGIT = 0.0006; // of the printed value, and its rounding

it.each(PRINTED)('range of %d values: mean %f, standard deviation %f', (n, d2, d3) => {
  const { mean, sd } = normalRange(n);
  expect(Math.abs(mean - d2)).toBeLessThan(HALF_DIGIT);
  expect(Math.abs(sd - d3)).toBeLessThan(HALF_DIGIT);
});

it.each([
  [2, Math.SQRT1_2, 1],
  [3, 0.5231, 1.98],
  [5, 0.403, 3.83],
  [10, 0.3146, 7.68],
])(
  'as a variance, %d values have factor %f and %f degrees of freedom (an independent program)',
  (n, factor, freedom) => {
    const found = rangeAsVariance(n);
    expect(Math.abs(found.factor - factor)).toBeLessThan(0.0001 /* the printed digits */);
    expect(Math.abs(found.freedom - freedom)).toBeLessThan(0.0051 /* the printed digits */);
  },
);
