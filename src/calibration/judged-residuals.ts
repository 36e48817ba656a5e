import { at } from '../numerics/at.ts';
import { inverseColumn } from '../numerics/cholesky.ts';
import type { Rows } from '../numerics/linear-algebra.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';

/** A fit taken as linear at its minimum, every measurement's error made independent and of variance 1. */
export interface WhitenedFit {
  /** L with L L' the covariance of the measurements' errors, in the order of the measurements. */
  readonly factor: Rows;
  /** A row for each measurement: plus or minus the derivatives of its prediction by the unknowns. */
  readonly jacobian: Rows;
  readonly residuals: readonly number[];
  /** Of the unknowns, not widened. */
  readonly covariance: Rows;
}

/** A measurement that alone fixes an unknown has no residual to judge; this keeps 0/0 at 0. */
const SMALLEST_FREEDOM = 1e-9;

/**
 * How far each measurement lies from what all the others say, in its own standard errors.
 *
 *   t_i = (V^-1 r)_i / sqrt((V^-1 - V^-1 J C J' V^-1)_ii)
 *
 * V the covariance of the measurements, r their residuals, J their derivatives, C the covariance of the unknowns. With
 * independent errors it is the studentised residual r_i / (s_i sqrt(1 - h_i)).
 *
 * @source Haslett, Hayes, J. R. Statist. Soc. B 60 (1998) 201-215, for correlated errors
 */
export const studentised = ({ factor, jacobian, residuals, covariance }: WhitenedFit): readonly number[] =>
  residuals.map((_, i) => {
    const alone = inverseColumn(factor, i);
    const size = dot(alone, (k) => at(alone, k));
    const pull = covariance.map((__, j) => dot(alone, (k) => at(at(jacobian, k), j)));
    const freedom = Math.max(1 - quadraticForm(covariance, pull) / size, SMALLEST_FREEDOM);
    return dot(alone, (k) => at(residuals, k)) / Math.sqrt(size * freedom);
  });

const dot = (a: readonly number[], b: (k: number) => number): number =>
  a.reduce((sum, value, k) => sum + value * b(k), 0);
