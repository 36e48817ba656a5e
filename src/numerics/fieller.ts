import { at } from './at.ts';
import type { Rows } from './linear-algebra.ts';
import { quadraticForm } from './quadratic-form.ts';

/** A straight line b0 + b1 x fitted to readings, with the covariance of its two coefficients. */
export interface FittedLine {
  readonly intercept: number;
  readonly slope: number;
  /** Of (intercept, slope). */
  readonly covariance: Rows;
}

/** Where a fitted line passes zero, and how well that is known. */
export interface Zero {
  readonly place: number;
  /** By the first derivatives, in the unit of x; the interval is not symmetric about the place. */
  readonly sd: number;
  /** Null when the slope is not sure enough to close it: then any place, or any beyond some place, might be meant. */
  readonly interval: readonly [low: number, high: number] | null;
}

/**
 * The zero of a fitted line with Fieller's interval: all x at which the line does not differ from 0 by more than t of its own
 * standard errors there.
 *
 *   (b0 + b1 x)^2 <= t^2 (C00 + 2 x C01 + x^2 C11)
 *
 * @param t of Student's distribution, for the share wanted; 0 or more
 * @returns a zero of Infinity or NaN for a slope of 0, with no interval
 * @source Fieller, J. R. Statist. Soc. B 16 (1954) 175-185
 * @checked unit: fieller.test.ts, against the inequality itself on a fine grid
 */
export function lineZero({ intercept: b0, slope: b1, covariance }: FittedLine, t: number): Zero {
  const place = -b0 / b1;
  const sd = Math.sqrt(quadraticForm(covariance, [-1 / b1, b0 / (b1 * b1)]));
  return { place, sd, interval: intervalOf({ intercept: b0, slope: b1, covariance }, t) };
}

function intervalOf({ intercept: b0, slope: b1, covariance }: FittedLine, t: number): Zero['interval'] {
  const c = (i: number, j: number): number => at(at(covariance, i), j);
  const A = b1 * b1 - t * t * c(1, 1);
  const B = b0 * b1 - t * t * c(0, 1);
  const Q = b0 * b0 - t * t * c(0, 0);
  const discriminant = B * B - A * Q;
  if (!(A > 0 && discriminant >= 0)) return null;
  const half = Math.sqrt(discriminant);
  return [(-B - half) / A, (-B + half) / A];
}
