import { expect, it } from 'vitest';
import {
  backwardSolve,
  choleskyFactor,
  forwardSolve,
  inverseColumn,
} from '../../../src/numerics/cholesky.ts';

const A = [
  [4, 2, -2],
  [2, 5, 1],
  [-2, 1, 6],
];

it('the factor of a matrix worked by hand', () =>
  // 4 = 2², 2/2 = 1, -2/2 = -1; 5 - 1 = 2², (1 + 1)/2 = 1; 6 - 1 - 1 = 2².
  expect(choleskyFactor(A)).toEqual([[2], [1, 2], [-1, 1, 2]]));

it('of a second one: 6/2 = 3 and 25 - 3² = 4²', () =>
  expect(
    choleskyFactor([
      [4, 6],
      [6, 25],
    ]),
  ).toEqual([[2], [3, 4]]));

it('substitutions of a single row divide by it', () => {
  expect(forwardSolve([[2]], [6])).toEqual([3]);
  expect(backwardSolve([[2]], [6])).toEqual([3]);
});

it('refuses two errors that are one: nothing is left of the second', () =>
  expect(() =>
    choleskyFactor([
      [1, 1],
      [1, 1],
    ]),
  ).toThrow(expect.objectContaining({ code: 'singular' })));

it('forward and backward substitution together solve A x = b, exactly where all is whole', () => {
  const L = choleskyFactor(A);
  // A times (1, 2, 3).
  expect(backwardSolve(L, forwardSolve(L, [2, 15, 18]))).toEqual([1, 2, 3]);
});

it('the columns of the inverse factor, worked by hand', () => {
  // Of [[2], [1, 2], [-1, 1, 2]]: 1/2, -(1/2)/2, (1/2 + 1/4)/2; then 1/2, -(1/2)/2; then 1/2.
  const L = choleskyFactor(A);
  expect([0, 1, 2].map((column) => inverseColumn(L, column))).toEqual([
    [0.5, -0.25, 0.375],
    [0, 0.5, -0.25],
    [0, 0, 0.5],
  ]);
});

it('refuses what is not positive definite', () =>
  expect(() =>
    choleskyFactor([
      [1, 2],
      [2, 1],
    ]),
  ).toThrow(/positive definite, in row 1/));
