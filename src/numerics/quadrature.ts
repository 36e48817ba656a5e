import { at } from './at.ts';
import { NumericalError } from './numerical-error.ts';

export interface QuadratureRule {
  /** On (-1, 1), increasing. */
  readonly nodes: readonly number[];
  /** Positive; their sum is 2. */
  readonly weights: readonly number[];
}

const MOST_NODES = 64;
/** Newton doubles its digits from two at the start; five steps would do. */
const NEWTON_STEPS = 10;

/**
 * The Gauss-Legendre rule of n nodes, exact for polynomials of degree 2n - 1.
 *
 * The nodes are the roots of the Legendre polynomial, by Newton from cos(pi (k + 3/4)/(n + 1/2)).
 *
 * @param n 1 to 64
 * @returns nodes and weights to a few roundings
 * @throws NumericalError 'singular' for another n
 * @source Abramowitz, Stegun, Handbook of Mathematical Functions, 1964, 25.4.29; starts 22.16.6
 */
export function gaussLegendre(n: number): QuadratureRule {
  if (!(Number.isInteger(n) && n >= 1 && n <= MOST_NODES))
    throw new NumericalError('singular', `a rule of ${n} nodes; 1 to ${MOST_NODES} are known`);
  const nodes = new Array<number>(n).fill(0);
  const weights = new Array<number>(n).fill(0);
  for (let k = 0; 2 * k < n; k++) {
    let x = 2 * k + 1 === n ? 0 : Math.cos((Math.PI * (k + 0.75)) / (n + 0.5));
    for (let step = 0; step < NEWTON_STEPS; step++) {
      const [value, slope] = legendre(n, x);
      x -= value / slope;
      if (Math.abs(value / slope) <= Number.EPSILON) break;
    }
    const [, slope] = legendre(n, x);
    const weight = 2 / ((1 - x * x) * slope * slope);
    [nodes[k], weights[k]] = [-x, weight];
    [nodes[n - 1 - k], weights[n - 1 - k]] = [x, weight];
  }
  return { nodes, weights };
}

/** The Legendre polynomial of degree n and its derivative, inside (-1, 1). */
function legendre(n: number, x: number): readonly [number, number] {
  let before = 0;
  let value = 1;
  for (let k = 1; k <= n; k++) [before, value] = [value, ((2 * k - 1) * x * value - (k - 1) * before) / k];
  return [value, (n * (before - x * value)) / (1 - x * x)];
}

/**
 * The integral of f from lo to hi by n Gauss-Legendre nodes.
 *
 * For smooth f; a kink or a jump belongs at an end of the interval.
 *
 * @throws NumericalError 'non-finite' where f is not finite
 */
export function integrate(f: (x: number) => number, lo: number, hi: number, n: number): number {
  const { nodes, weights } = gaussLegendre(n);
  const half = (hi - lo) / 2;
  const sum = nodes.reduce((total, node, k) => total + at(weights, k) * f(lo + half * (1 + node)), 0);
  if (!Number.isFinite(sum))
    throw new NumericalError('non-finite', `f is not finite between ${lo} and ${hi}`);
  return half * sum;
}
