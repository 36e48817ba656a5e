import { describe, expect, it } from 'vitest';
import {
  conditionOf,
  inverseSymmetric,
  type Rows,
  solveSymmetric,
  solveUpper,
  triangularFactor,
} from '../../../src/numerics/linear-algebra.ts';

const hilbert = (n: number): number[][] =>
  Array.from({ length: n }, (_, i) => Array.from({ length: n }, (_, j) => 1 / (i + j + 1)));
const product = (A: Rows, B: Rows): number[][] =>
  A.map((row) => (B[0] ?? []).map((_, j) => row.reduce((sum, a, k) => sum + a * (B[k]?.[j] ?? 0), 0)));
const transposed = (A: Rows): number[][] => (A[0] ?? []).map((_, j) => A.map((row) => row[j] ?? 0));
const farthest = (A: Rows, B: Rows): number =>
  Math.max(...A.flatMap((row, i) => row.map((a, j) => Math.abs(a - (B[i]?.[j] ?? Number.NaN)))));
const singular = expect.objectContaining({ code: 'singular' });

describe('triangularFactor', () => {
  it.each([
    [
      'square',
      [
        [4, 3],
        [1, 2],
      ],
    ],
    [
      'tall',
      [
        [1, 2, 3],
        [4, 5, 6],
        [7, 8, 10],
        [-1, 0, 2],
        [3, 3, 3],
        [0, 1, 0],
        [5, -5, 1],
        [2, 2, -9],
        [1, 1, 1],
      ],
    ],
    [
      'wide',
      [
        [1, 2, 3],
        [4, 5, 6],
      ],
    ],
    ['empty of columns but one', [[2], [-3], [6]]],
  ])("of a %s matrix is upper triangular with R'R = A'A", (_, A) => {
    const R = triangularFactor(A);
    const n = A[0]?.length ?? 0;
    expect(R.map((row) => row.length)).toEqual(new Array(n).fill(n));
    expect(R.every((row, i) => row.slice(0, i).every((value) => value === 0))).toBe(true);
    expect(farthest(product(transposed(R), R), product(transposed(A), A))).toBeLessThan(
      1e-12 /* nine terms of at most 100, each rounded */,
    );
  });
  it('leaves the matrix as it was', () => {
    const A = [
      [1, 2],
      [3, 4],
      [5, 6],
    ];
    triangularFactor(A);
    expect(A).toEqual([
      [1, 2],
      [3, 4],
      [5, 6],
    ]);
  });
});

describe('solveUpper', () => {
  it('substitutes backwards', () =>
    expect(
      solveUpper(
        [
          [2, 1],
          [0, 4],
        ],
        [5, 8],
      ),
    ).toEqual([1.5, 2]));
  it('takes numbers below 1e-15 for what they are', () =>
    expect(solveUpper([[2 ** -70]], [3 * 2 ** -70])).toEqual([3]));
  it('refuses a 0 on the diagonal though a solution exists', () =>
    expect(() =>
      solveUpper(
        [
          [1, 2],
          [0, 0],
        ],
        [1, 0],
      ),
    ).toThrow(singular));
});

describe('solveSymmetric', () => {
  it('solves by hand arithmetic: 2x + y = 4, x + 3y = 7', () => {
    const [x = 0, y = 0] = solveSymmetric(
      [
        [2, 1],
        [1, 3],
      ],
      [4, 7],
    );
    expect(Math.abs(x - 1)).toBeLessThan(1e-15);
    expect(Math.abs(y - 2)).toBeLessThan(1e-15);
  });
  it('needs a pivot: 0 on the diagonal', () =>
    expect(
      solveSymmetric(
        [
          [0, 2],
          [2, 0],
        ],
        [6, 8],
      ),
    ).toEqual([4, 3]));
  it('is indifferent to the units of the unknowns', () => {
    const [x = 0, y = 0] = solveSymmetric(
      [
        [2e20, 1],
        [1, 3e-20],
      ],
      [4, 7e-20],
    );
    expect(Math.abs(x * 1e20 - 1)).toBeLessThan(1e-15);
    expect(Math.abs(y / 2 - 1)).toBeLessThan(1e-15);
  });
  it('refuses a singular matrix though the equations agree', () =>
    expect(() =>
      solveSymmetric(
        [
          [1, 2],
          [2, 4],
        ],
        [1, 2],
      ),
    ).toThrow(singular));
  it('refuses a matrix that rounding alone keeps from being singular', () => {
    const a = [0.1, 0.7, 0.3];
    const b = [0.2, 0.3, 0.9];
    expect(() =>
      solveSymmetric(
        a.map((x, i) => a.map((y, j) => x * y + (b[i] ?? 0) * (b[j] ?? 0))),
        a,
      ),
    ).toThrow(singular);
  });
});

describe('inverseSymmetric', () => {
  it('of the 3 x 3 Hilbert matrix is 9 -36 30 / -36 192 -180 / 30 -180 180', () => {
    const expected = [
      [9, -36, 30],
      [-36, 192, -180],
      [30, -180, 180],
    ];
    expect(farthest(inverseSymmetric(hilbert(3)), expected)).toBeLessThan(
      1e-11 /* condition 500, entries 192, 1e-16 */,
    );
  });
  it('is symmetric to the last bit', () => {
    const inverse = inverseSymmetric(hilbert(6));
    expect(transposed(inverse)).toEqual(inverse);
  });
  it.each([
    [
      'a row of 0',
      [
        [1, 0],
        [0, 0],
      ],
      singular,
    ],
    ['the 13 x 13 Hilbert matrix, condition 1e18', hilbert(13), singular],
    ['no rows', [], expect.objectContaining({ code: 'non-finite' })],
    ['a matrix that is not square', [[1, 2]], expect.objectContaining({ code: 'non-finite' })],
    [
      'a NaN',
      [
        [1, Number.NaN],
        [0, 1],
      ],
      expect.objectContaining({ code: 'non-finite' }),
    ],
  ])('refuses %s', (_, A, error) => expect(() => inverseSymmetric(A)).toThrow(error));
});

describe('conditionOf', () => {
  it('of the identity is 1, and of a diagonal in mixed units too', () => {
    expect(
      conditionOf([
        [1, 0],
        [0, 1],
      ]),
    ).toBe(1);
    expect(
      Math.abs(
        conditionOf([
          [1e12, 0],
          [0, 1e-9],
        ]) - 1,
      ),
    ).toBeLessThan(1e-15);
  });
  it('of [[1, c], [c, 1]] is (1 + c)/(1 - c)', () =>
    expect(
      Math.abs(
        conditionOf([
          [1, 0.9],
          [0.9, 1],
        ]) - 19,
      ),
    ).toBeLessThan(1e-13));
  it('of a singular matrix is beyond 1e15', () =>
    expect(
      conditionOf([
        [1, 2],
        [2, 4],
      ]),
    ).toBeGreaterThan(1e15));
});
