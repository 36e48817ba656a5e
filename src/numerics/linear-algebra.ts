import { at, floatAt } from './at.ts';
import { NumericalError } from './numerical-error.ts';

export type Rows = readonly (readonly number[])[];

/** How many columns a matrix has; 0 for one without rows. */
const widthOf = ([first]: Rows): number => (first === undefined ? 0 : first.length);

/** A column of a matrix from the top. */
export const matrixColumn = (A: Rows, j: number): number[] => A.map((row) => at(row, j));

/**
 * The upper triangular R with R'R = A'A, by orthogonal reflections, so without squaring the condition of A.
 *
 * With a right-hand side as the last column, that column of R holds Q'b above and the length of the least residual at the end.
 *
 * @param A rows of equal length n; fewer than n rows leave rows of 0 at the end of R
 * @returns n rows of length n; a diagonal element may have either sign
 * @source Householder, Unitary triangularization of a nonsymmetric matrix, J. ACM 5 (1958) 339-342
 */
export function triangularFactor(A: Rows): number[][] {
  const n = widthOf(A);
  const columns = Array.from({ length: n }, (_, j) => Float64Array.from(matrixColumn(A, j)));
  for (const [k, column] of columns.entries()) {
    const below = column.subarray(k);
    const reflection = reflectionOf(below);
    if (reflection === null) continue;
    for (const other of columns.slice(k + 1)) reflect(other.subarray(k), reflection);
    below.fill(0);
    below[0] = reflection.length;
  }
  return Array.from({ length: n }, (_, i) =>
    columns.map((column) => (i < column.length ? floatAt(column, i) : 0)),
  );
}

/** The reflection that turns a vector into one along its first axis: x - (v.x / scale) v. */
interface Reflection {
  readonly v: Float64Array;
  readonly scale: number;
  /** Of the turned vector, with its sign. */
  readonly length: number;
}

/** Null for a vector of zeros, which already lies along every axis. */
function reflectionOf(x: Float64Array): Reflection | null {
  // Divided by its largest element the vector can be squared without leaving the range of numbers.
  const largest = x.reduce((most, value) => Math.max(most, Math.abs(value)), 0);
  if (largest === 0) return null;
  const v = x.map((value) => value / largest);
  const first = floatAt(v, 0);
  // The sign that makes the first element larger, where the other would cancel.
  const length = (first < 0 ? 1 : -1) * Math.sqrt(dot(v, v));
  v[0] = first - length;
  return { v, scale: -length * floatAt(v, 0), length: length * largest };
}

function reflect(x: Float64Array, { v, scale }: Reflection): void {
  const share = dot(x, v) / scale;
  for (const [i, value] of v.entries()) x[i] = floatAt(x, i) - share * value;
}

function dot(a: Float64Array, b: Float64Array): number {
  let sum = 0;
  for (let i = 0; i < a.length; i++) sum += floatAt(a, i) * floatAt(b, i);
  return sum;
}

/**
 * x with R x = b for an upper triangular R.
 *
 * @throws NumericalError 'singular' when a diagonal element is 0, even where a solution exists
 */
export function solveUpper(R: Rows, b: readonly number[]): number[] {
  if (R.some((row, i) => row[i] === 0))
    throw new NumericalError('singular', 'a triangular matrix has a 0 on its diagonal');
  const x = [...b];
  for (let i = R.length - 1; i >= 0; i--) {
    const row = at(R, i);
    let left = at(b, i);
    for (let j = i + 1; j < R.length; j++) left -= at(row, j) * at(x, j);
    x[i] = left / at(row, i);
  }
  return x;
}

/** Condition at which a solution keeps no digit. */
const SINGULAR_CONDITION = 1 / (4 * Number.EPSILON);

interface Scaled {
  /** Factors that bring the diagonal of the matrix to +-1, so that units do not count as ill-conditioning. */
  readonly scales: readonly number[];
  readonly inverse: Rows;
  /** In the 1-norm, after scaling: how many times a relative error of the matrix may grow in a solution. */
  readonly condition: number;
}

const absoluteSum = (values: readonly number[]): number =>
  values.reduce((sum, value) => sum + Math.abs(value), 0);
const oneNorm = (A: Rows): number => Math.max(...A.map((_, j) => absoluteSum(matrixColumn(A, j))));

const identity = (n: number): number[][] =>
  Array.from({ length: n }, (_, i) => new Array<number>(n).fill(0).with(i, 1));

function scaledInverse(A: Rows): Scaled {
  const n = A.length;
  if (n === 0 || A.some((row) => row.length !== n || !row.every(Number.isFinite)))
    throw new NumericalError('non-finite', `not a square matrix of finite numbers, of ${n} rows`);
  const scales = A.map(
    (row, i) => 1 / Math.sqrt(Math.abs(at(row, i)) || Math.max(...row.map(Math.abs)) || 1),
  );
  const scaled = A.map((row, i) => row.map((a, j) => a * at(scales, i) * at(scales, j)));
  const beside = identity(n);
  const factor = triangularFactor(scaled.map((row, i) => [...row, ...at(beside, i)])).slice(0, n);
  const R = factor.map((row) => row.slice(0, n));
  const columns = R.map((_, j) => solveUpper(R, matrixColumn(factor, n + j)));
  const inverse = columns.map((column, j) => column.map((value, i) => (value + at(at(columns, i), j)) / 2));
  return { scales, inverse, condition: oneNorm(scaled) * oneNorm(inverse) };
}

/**
 * The inverse of a symmetric matrix, symmetric to the last bit.
 *
 * @throws NumericalError 'singular' when its condition exceeds 1e15, 'non-finite'
 */
export function inverseSymmetric(A: Rows): number[][] {
  const { scales, inverse, condition } = scaledInverse(A);
  if (!(condition < SINGULAR_CONDITION))
    throw new NumericalError(
      'singular',
      `a matrix of condition ${condition.toExponential(1)} has no usable inverse`,
    );
  return inverse.map((row, i) => row.map((value, j) => value * (at(scales, i) * at(scales, j))));
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
  const x = times(inverse, b);
  const left = times(A, x).map((value, i) => at(b, i) - value);
  return times(inverse, left).map((value, i) => at(x, i) + value);
}

/** A v. */
export const times = (A: Rows, v: readonly number[]): number[] =>
  A.map((row) => row.reduce((sum, a, j) => sum + a * at(v, j), 0));
