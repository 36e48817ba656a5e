import { describe, expect, it } from 'vitest';
import {
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
  it('of the columns (3, 4) and (5, 10) has 5, 11 and 2 by hand', () => {
    // Along (3, 4)/5 the second column has (15 + 40)/5 = 11; across it, by (-4, 3)/5, (-20 + 30)/5 = 2.
    const R = triangularFactor([
      [3, 5],
      [4, 10],
    ]);
    const [[a = 0, b = 0] = [], [, c = 0] = []] = R;
    expect(Math.abs(Math.abs(a) - 5)).toBeLessThan(1e-15 * 5);
    expect(Math.abs(a * b - 55)).toBeLessThan(1e-15 * 55);
    expect(Math.abs(Math.abs(c) - 2)).toBeLessThan(4e-15 /* rounding of terms of 10 */);
  });
  it('solves the least squares of y = 1, 3, 2 at x = 0, 1, 2: 1.5 + 0.5 x, with 1.5 left over', () => {
    // Mean 2 at x = 1, slope (2 - 1)/2; residuals -0.5, 1, -0.5.
    const R = triangularFactor([
      [1, 0, 1],
      [1, 1, 3],
      [1, 2, 2],
    ]);
    const upper = R.slice(0, 2).map((row) => row.slice(0, 2));
    const [at0 = 0, slope = 0] = solveUpper(
      upper,
      R.slice(0, 2).map(([, , b = 0]) => b),
    );
    expect(Math.abs(at0 - 1.5)).toBeLessThan(2e-15 /* a few roundings */);
    expect(Math.abs(slope - 0.5)).toBeLessThan(2e-15 /* a few roundings */);
    expect(Math.abs((R[2]?.[2] ?? 0) ** 2 - 1.5)).toBeLessThan(4e-15 /* a few roundings */);
  });
  it('has a 0 on the diagonal, to rounding, where a column repeats another, and exactly where it holds nothing', () => {
    const repeated = triangularFactor([
      [1, 2],
      [2, 4],
      [3, 6],
    ]);
    expect(Math.abs(repeated[1]?.[1] ?? 1)).toBeLessThan(1e-15 * 6);
    expect(
      triangularFactor([
        [1, 0],
        [2, 0],
      ])[1]?.[1],
    ).toBe(0);
  });
  it.each([1e-200, 1e200])('keeps lengths whose squares are out of range: 5 of (3, 4) at %d', (size) => {
    const [[length = 0] = []] = triangularFactor([[3 * size], [4 * size]]);
    expect(Math.abs(Math.abs(length) / size - 5)).toBeLessThan(5e-15 /* rounding */);
  });
  it('shows a NaN, and does not take it for 0', () =>
    expect(triangularFactor([[Number.NaN], [1]])[0]?.[0]).toBeNaN());
  it('of nothing is nothing', () => expect(triangularFactor([])).toEqual([]));
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
  it('solves three by hand: z = 3, y = (13 - 3)/5 = 2, x = (10 - 2 - 6)/2 = 1', () =>
    expect(
      solveUpper(
        [
          [2, 1, 2],
          [0, 5, 1],
          [0, 0, 4],
        ],
        [10, 13, 12],
      ),
    ).toEqual([1, 2, 3]));
  it('takes of the right-hand side what the matrix has rows for, and leaves it as it was', () => {
    const b = [6, 7];
    expect(solveUpper([[3]], b).slice(0, 1)).toEqual([2]);
    expect(b).toEqual([6, 7]);
  });
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
    expect(Math.abs(x - 1)).toBeLessThan(1e-15 /* rounding */);
    expect(Math.abs(y - 2)).toBeLessThan(1e-15 /* rounding */);
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
    expect(Math.abs(x * 1e20 - 1)).toBeLessThan(1e-15 /* rounding */);
    expect(Math.abs(y / 2 - 1)).toBeLessThan(1e-15 /* rounding */);
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

describe('the condition that inverseSymmetric accepts', () => {
  /** Of condition (1 + c)/(1 - c), the ratio of its two eigenvalues. */
  const nearlyOnes = (c: number): Rows => [
    [1, c],
    [c, 1],
  ];
  it('does not count units: a diagonal of 1e12 and 1e-9 is inverted to the last bit or two', () => {
    const [[a = 0] = [], [, b = 0] = []] = inverseSymmetric([
      [1e12, 0],
      [0, 1e-9],
    ]);
    expect(Math.abs(a * 1e12 - 1)).toBeLessThan(1e-15 /* rounding */);
    expect(Math.abs(b * 1e-9 - 1)).toBeLessThan(1e-15 /* rounding */);
  });
  it('takes one of 5.6e14 and refuses one of 4.5e15, beyond a quarter of the roundings in 1', () => {
    expect(inverseSymmetric(nearlyOnes(1 - 2 ** -48)).length).toBe(2);
    expect(() => inverseSymmetric(nearlyOnes(1 - 2 ** -51))).toThrow(singular);
  });
  it('says the condition: of [[1, c], [c, 1]] with c within 1e-16 of 1, over 1e15', () =>
    expect(() => inverseSymmetric(nearlyOnes(1 - 2 ** -52))).toThrow(/condition [1-9]\.\de\+1[56] /));
});
