import { at } from './at.ts';
import type { FittedLine } from './fieller.ts';
import { inverseSymmetric, type Rows, times } from './linear-algebra.ts';

/** A straight line through readings, and how far they lie from it. */
export interface LineFit extends FittedLine {
  /** r'V⁻¹r of the residuals r: a sum of as many squares as there are readings, less two. */
  readonly chiSquared: number;
}

/**
 * The line b0 + b1 x of least squares through readings whose errors have the covariance V.
 *
 *   b = (X'V⁻¹X)⁻¹ X'V⁻¹ y
 *
 * @param x places, at least two of them different
 * @param y readings
 * @param V covariance of the readings, symmetric, positive definite
 * @throws NumericalError 'singular' when all places are alike
 * @source Aitken, Proc. R. Soc. Edinburgh 55 (1935) 42-48
 */
export function lineThrough(x: readonly number[], y: readonly number[], V: Rows): LineFit {
  const W = inverseSymmetric(V);
  const unit = x.map(() => 1);
  const [ones, wx, wy] = [times(W, unit), times(W, x), times(W, y)];
  const dot = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, i) => sum + value * at(b, i), 0);
  const covariance = inverseSymmetric([
    [dot(unit, ones), dot(unit, wx)],
    [dot(unit, wx), dot(x, wx)],
  ]);
  const coefficients = times(covariance, [dot(unit, wy), dot(x, wy)]);
  const line = { intercept: at(coefficients, 0), slope: at(coefficients, 1) };
  const residuals = y.map((value, i) => value - line.intercept - line.slope * at(x, i));
  return { ...line, covariance, chiSquared: dot(residuals, times(W, residuals)) };
}

/** Independent readings as a covariance: variances on the diagonal. */
export const independent = (variances: readonly number[]): Rows =>
  variances.map((variance, i) => variances.map((_, j) => (i === j ? variance : 0)));
