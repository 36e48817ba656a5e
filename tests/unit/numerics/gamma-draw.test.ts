import { expect, it } from 'vitest';
import { varianceDraw } from '../../../src/numerics/gamma-draw.ts';
import { randomStream } from '../../../src/numerics/random.ts';

const DRAWS = 20_000;

it.each([0.5, 1, 1.98, 2.93, 5, 20])(
  'variances of %f degrees of freedom have mean 1 and variance 2/freedom',
  (freedom) => {
    const stream = randomStream(14, 0);
    const drawn = Array.from({ length: DRAWS }, () => varianceDraw(stream, freedom));
    const mean = drawn.reduce((sum, value) => sum + value, 0) / DRAWS;
    const variance = drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / DRAWS;
    // four standard errors; the variance of a variance has the fourth moment, (2 + 12/freedom)/draws relative
    expect(Math.abs(mean - 1)).toBeLessThan(4 * Math.sqrt(2 / freedom / DRAWS));
    expect(Math.abs((variance * freedom) / 2 - 1)).toBeLessThan(4 * Math.sqrt((2 + 12 / freedom) / DRAWS));
  },
);
