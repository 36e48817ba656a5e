import { createDenseMatrixClass, createMatrixClass, createQr, createUsolve, type Matrix } from 'mathjs';
import { NumericalError } from './numerical-error.ts';

export type Rows = readonly (readonly number[])[];

/**
 * mathjs works on numbers of many kinds, and imports them all; over plain numbers, given here, two routines and the
 * matrix class take 6 ms of start-up instead of 60 or more. They also compare exactly, where mathjs's own take 1e-15 for 0.
 */
const DenseMatrix = createDenseMatrixClass({ Matrix: createMatrixClass({}), config: {} });
/** The matrix takes the rows as they are, and the routines used here leave them so. */
const matrix = (data: Rows): Matrix => new DenseMatrix({ data, size: [data.length, data[0]?.length ?? 0] });
const arithmetic = {
  typed: (_name: string, forTypes: Readonly<Record<string, unknown>>) =>
    forTypes['DenseMatrix'] ?? forTypes['DenseMatrix, Array | Matrix'],
  matrix,
  DenseMatrix,
  zeros: ([n]: readonly [number]) => new Array<number>(n).fill(0),
  identity: ([n]: readonly [number]) => matrix(identityRows(n)),
  addScalar: (a: number, b: number) => a + b,
  subtractScalar: (a: number, b: number) => a - b,
  multiplyScalar: (a: number, b: number) => a * b,
  divideScalar: (a: number, b: number) => a / b,
  equal: (a: number, b: number) => a === b,
  equalScalar: (a: number, b: number) => a === b,
  isZero: (a: number) => a === 0,
  sign: Math.sign,
  sqrt: Math.sqrt,
  conj: (a: number) => a,
  unaryMinus: (a: number) => -a,
  complex: (a: number) => a,
};
const qr = createQr(arithmetic);
const usolve = createUsolve(arithmetic);

const identityRows = (n: number): number[][] => {
  const rows: number[][] = [];
  for (let i = 0; i < n; i++) rows.push(new Array<number>(n).fill(0).with(i, 1));
  return rows;
};

/** The numbers of a mathjs matrix of two dimensions. */
const rowsOf = (m: Matrix): number[][] => m.valueOf() as number[][]; // the library types an array of any depth

/**
 * The upper triangular R with R'R = A'A, by orthogonal reflections, so without squaring the condition of A.
 *
 * With a right-hand side as the last column, that column of R holds Q'b above and the length of the least residual at the end.
 * The rows are taken in blocks: mathjs also forms Q, which for all rows at once would cost their number squared.
 *
 * @param A rows of equal length n; fewer than n rows leave rows of 0 at the end of R
 */
export function triangularFactor(A: Rows): number[][] {
  const n = A[0]?.length ?? 0;
  let R: number[][] = [];
  for (let i = 0; i < A.length; i += 2 * n) {
    const block = [...R, ...A.slice(i, i + 2 * n)];
    R = rowsOf(qr(matrix(block)).R).slice(0, n);
  }
  while (R.length < n) R.push(new Array<number>(n).fill(0));
  return R;
}

/**
 * x with R x = b for an upper triangular R.
 *
 * @throws NumericalError 'singular' when a diagonal element is 0, even where a solution exists
 */
export function solveUpper(R: Rows, b: readonly number[]): number[] {
  if (R.some((row, i) => row[i] === 0))
    throw new NumericalError('singular', 'a triangular matrix has a 0 on its diagonal');
  return rowsOf(usolve(matrix(R), b)).map(([x = 0]) => x);
}

/** Condition at which a solution keeps no digit. */
const SINGULAR_CONDITION = 1 / (4 * Number.EPSILON);

interface Scaled {
  /** Factors that bring the diagonal of the matrix to +-1, so that units do not count as ill-conditioning. */
  readonly scales: readonly number[];
  readonly inverse: Rows;
  readonly condition: number;
}

const oneNorm = (A: Rows): number =>
  Math.max(...A.map((_, j) => A.reduce((sum, row) => sum + Math.abs(row[j] ?? 0), 0)));

function scaledInverse(A: Rows): Scaled {
  const n = A.length;
  if (n === 0 || A.some((row) => row.length !== n || !row.every(Number.isFinite)))
    throw new NumericalError('non-finite', `not a square matrix of finite numbers, of ${n} rows`);
  const scales = A.map(
    (row, i) => 1 / Math.sqrt(Math.abs(row[i] ?? 0) || Math.max(...row.map(Math.abs)) || 1),
  );
  const scaled = A.map((row, i) => row.map((a, j) => a * (scales[i] ?? 1) * (scales[j] ?? 1)));
  const factor = triangularFactor(
    scaled.map((row, i) => [...row, ...row.map((_, j) => (i === j ? 1 : 0))]),
  ).slice(0, n);
  const R = factor.map((row) => row.slice(0, n));
  if (R.some((row, i) => row[i] === 0)) return { scales, inverse: [], condition: Infinity };
  const columns = R.map((_, j) =>
    solveUpper(
      R,
      factor.map((row) => row[n + j] ?? 0),
    ),
  );
  const inverse = columns.map((column, j) => column.map((value, i) => (value + (columns[i]?.[j] ?? 0)) / 2));
  return { scales, inverse, condition: oneNorm(scaled) * oneNorm(inverse) };
}

/**
 * The condition number of a symmetric matrix, in the 1-norm, after scaling to a diagonal of +-1: how many times a
 * relative error of the matrix may grow in a solution. Infinity for a singular one.
 */
export const conditionOf = (A: Rows): number => scaledInverse(A).condition;

/**
 * The inverse of a symmetric matrix, symmetric to the last bit.
 *
 * @throws NumericalError 'singular' when its condition exceeds 1e15 (mathjs's own solver answers for some such matrices), 'non-finite'
 */
export function inverseSymmetric(A: Rows): number[][] {
  const { scales, inverse, condition } = scaledInverse(A);
  if (!(condition < SINGULAR_CONDITION))
    throw new NumericalError(
      'singular',
      `a matrix of condition ${condition.toExponential(1)} has no usable inverse`,
    );
  return inverse.map((row, i) => row.map((value, j) => value * ((scales[i] ?? 1) * (scales[j] ?? 1))));
}

/**
 * x with A x = b for a symmetric A.
 *
 * One step of refinement follows the multiplication by the inverse, which then loses no more than a factorisation would.
 *
 * @throws NumericalError as `inverseSymmetric`
 */
export function solveSymmetric(A: Rows, b: readonly number[]): number[] {
  const inverse = inverseSymmetric(A);
  const x = product(inverse, b);
  const left = product(A, x).map((value, i) => (b[i] ?? 0) - value);
  return product(inverse, left).map((value, i) => (x[i] ?? 0) + value);
}

const product = (A: Rows, x: readonly number[]): number[] =>
  A.map((row) => row.reduce((sum, a, j) => sum + a * (x[j] ?? 0), 0));
