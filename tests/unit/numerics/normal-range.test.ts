import { expect, it } from 'vitest';
import { normalRange, rangeAsVariance } from '../../../src/numerics/normal-range.ts';

// The tables of d2 and d3 for 2 to 25 values: reference/distribution-tables, range.csv.
it('the range of two normal values is the size of a normal one: mean 2/√π, mean square 2', () => {
  const { mean, sd } = normalRange(2);
  expect(Math.abs(mean - 2 / Math.sqrt(Math.PI))).toBeLessThan(1e-4 /* of the trapezium rule */);
  expect(Math.abs(sd - Math.sqrt(2 - 4 / Math.PI))).toBeLessThan(1e-4 /* of the same */);
});

it('the mean range of three is 3/√π', () =>
  expect(Math.abs(normalRange(3).mean - 3 / Math.sqrt(Math.PI))).toBeLessThan(1e-4 /* of the same */));

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
