import { at } from './at.ts';
import type { Rows } from './linear-algebra.ts';
import { NumericalError } from './numerical-error.ts';

/**
 * The lower triangular L with L L' = A, for a symmetric A that is positive definite.
 *
 * A covariance of n errors factored so turns n correlated errors into n independent ones of variance 1, by `forwardSolve`.
 *
 * @throws NumericalError 'singular' when A is not positive definite
 * @source Golub, Van Loan, Matrix Computations, 4th ed. 2013, algorithm 4.2.1
 */
export function choleskyFactor(A: Rows): number[][] {
  const L: number[][] = [];
  for (const [i, row] of A.entries()) {
    const line: number[] = [];
    for (let j = 0; j <= i; j += 1) {
      const above = j === i ? line : at(L, j);
      let left = at(row, j);
      for (let k = 0; k < j; k += 1) left -= at(line, k) * at(above, k);
      if (j < i) line.push(left / at(above, j));
      else if (left > 0) line.push(Math.sqrt(left));
      else throw new NumericalError('singular', `a covariance that is not positive definite, in row ${i}`);
    }
    L.push(line);
  }
  return L;
}

/** x with L x = b, for the L of `choleskyFactor`. */
export function forwardSolve(L: Rows, b: readonly number[]): number[] {
  const x: number[] = [];
  for (const [i, row] of L.entries()) {
    let left = at(b, i);
    for (let k = 0; k < i; k += 1) left -= at(row, k) * at(x, k);
    x.push(left / at(row, i));
  }
  return x;
}

/** Column `index` of the inverse of L: `forwardSolve` of a 1 there and zeros, of which those in front are not worked through. */
export function inverseColumn(L: Rows, index: number): number[] {
  const x: number[] = [];
  for (const [i, row] of L.entries()) {
    let left = i === index ? 1 : 0;
    for (let k = index; k < i; k += 1) left -= at(row, k) * at(x, k);
    x.push(i < index ? 0 : left / at(row, i));
  }
  return x;
}

/** x with L' x = b, for the L of `choleskyFactor`. */
export function backwardSolve(L: Rows, b: readonly number[]): number[] {
  const x = [...b];
  for (let i = L.length - 1; i >= 0; i -= 1) {
    let left = at(b, i);
    for (let k = i + 1; k < L.length; k += 1) left -= at(at(L, k), i) * at(x, k);
    x[i] = left / at(at(L, i), i);
  }
  return x;
}
