import { at } from './at.ts';
import type { Rows } from './linear-algebra.ts';

/** gᵀ C g: the variance of Σ g_i x_i for x of covariance C. */
export const quadraticForm = (C: Rows, g: readonly number[]): number =>
  C.reduce((sum, row, i) => sum + at(g, i) * row.reduce((inner, value, j) => inner + value * at(g, j), 0), 0);
