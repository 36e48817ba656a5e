import { expect, it } from 'vitest';
import { quadraticForm } from '../../../src/numerics/quadratic-form.ts';

it('the variance of x + 2 y, of variances 2 and 3 and covariance 1, is 2 + 4 + 12', () =>
  expect(
    quadraticForm(
      [
        [2, 1],
        [1, 3],
      ],
      [1, 2],
    ),
  ).toBe(18));

it('of nothing is 0', () => expect(quadraticForm([], [])).toBe(0));
