import { at } from './at.ts';
import { NumericalError } from './numerical-error.ts';

/** Nearer than this a quotient could overflow, and no function that is interpolated changes. */
const INDISTINGUISHABLE = 1e-200;

const requireCount = (n: number): void => {
  if (!Number.isInteger(n) || n < 2)
    throw new NumericalError('singular', `${n} nodes do not span an interval: at least 2`);
};

/**
 * The places where the Chebyshev polynomial of degree n - 1 is at its extremes, moved to [lo, hi], increasing; both ends
 * are among them.
 *
 *   x_j = (lo + hi)/2 - (hi - lo)/2 cos(pi j/(n - 1))
 *
 * @throws NumericalError 'singular' for fewer than 2
 */
export function chebyshevNodes(n: number, lo: number, hi: number): number[] {
  requireCount(n);
  return Array.from({ length: n }, (_, j) => {
    if (j === 0) return lo;
    if (j === n - 1) return hi;
    // The sine of the angle from the middle keeps the nodes symmetrical to the last bit.
    return (lo + hi) / 2 + ((hi - lo) / 2) * Math.sin((Math.PI * (2 * j - (n - 1))) / (2 * (n - 1)));
  });
}

/**
 * The barycentric weights of `chebyshevNodes(n, ...)`: 1 with alternating sign, half at the ends; the interval cancels.
 *
 * @source Berrut, Trefethen, Barycentric Lagrange interpolation, SIAM Review 46 (2004) 501-517, eq. 5.4
 */
export function barycentricWeights(n: number): number[] {
  requireCount(n);
  return Array.from({ length: n }, (_, j) => {
    const size = j === 0 || j === n - 1 ? 0.5 : 1;
    return j % 2 === 0 ? size : -size;
  });
}

/**
 * The polynomial through (nodes, values) at x, from the nodes' barycentric weights.
 *
 * Meant for x within the nodes; outside, the polynomial grows without bound.
 *
 * @throws NumericalError 'singular' when the three lists differ in length
 * @source Berrut, Trefethen, as above, eq. 4.2
 */
export function interpolateAt(
  nodes: readonly number[],
  weights: readonly number[],
  values: readonly number[],
  x: number,
): number {
  if (nodes.length !== weights.length || nodes.length !== values.length)
    throw new NumericalError(
      'singular',
      `${nodes.length} nodes, ${weights.length} weights, ${values.length} values: not one of each`,
    );
  let numerator = 0;
  let denominator = 0;
  for (const [j, node] of nodes.entries()) {
    const value = at(values, j);
    if (Math.abs(x - node) < INDISTINGUISHABLE) return value;
    const share = at(weights, j) / (x - node);
    numerator += share * value;
    denominator += share;
  }
  return numerator / denominator;
}
