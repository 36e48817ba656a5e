import { NumericalError } from './numerical-error.ts';

/** B_2k / (2k (2k - 1)): the coefficients of Stirling's series in 1/x, 1/x^3, ... */
const STIRLING = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156] as const;
/** From here the series above is good to a rounding: its next term is below 1e-17. */
const STIRLING_FROM = 15;

/**
 * The logarithm of the gamma function.
 *
 * @param x above 0
 * @returns with an error of a few roundings of the larger of the result and 1
 * @throws NumericalError 'non-finite' for another x
 * @source Abramowitz, Stegun, Handbook of Mathematical Functions, 1964, 6.1.15 and 6.1.41
 */
export function logGamma(x: number): number {
  if (!(x > 0 && x < Infinity)) throw new NumericalError('non-finite', `log gamma of ${x}`, x);
  let product = 1;
  let z = x;
  for (; z < STIRLING_FROM; z++) product *= z;
  const perSquare = 1 / (z * z);
  const series = STIRLING.reduceRight((sum, coefficient) => sum * perSquare + coefficient, 0) / z;
  return (z - 0.5) * Math.log(z) - z + 0.5 * Math.log(2 * Math.PI) + series - Math.log(product);
}

/** Terms after which a series or continued fraction is given up: enough for parameters up to 1e8. */
const MAX_TERMS = 100_000;
const SMALLEST = Number.MIN_VALUE / Number.EPSILON;

/**
 * The continued fraction b0 + a1/(b1 + a2/(b2 + ...)), from its partial numerators and denominators.
 *
 * @source Thompson, Barnett, J. Comput. Phys. 64 (1986) 490-509: Lentz's method with zeros replaced
 */
function continuedFraction(b0: number, term: (k: number) => readonly [number, number]): number {
  const away = (value: number) => (Math.abs(value) < SMALLEST ? SMALLEST : value);
  let value = away(b0);
  let c = value;
  let d = 0;
  for (let k = 1; k <= MAX_TERMS; k++) {
    const [a, b] = term(k);
    d = 1 / away(b + a * d);
    c = away(b + a / c);
    value *= c * d;
    if (Math.abs(c * d - 1) <= Number.EPSILON) return value;
  }
  throw new NumericalError('not-converged', `a continued fraction did not settle in ${MAX_TERMS} terms`);
}

/** A share of a distribution below a place and the share above it; neither is got by subtraction where it is small. */
export interface Shares {
  readonly below: number;
  readonly above: number;
}

/**
 * The regularised incomplete gamma functions P(a, x), below, and Q(a, x), above.
 *
 * @param a above 0
 * @param x not negative
 * @returns relative error of the smaller about 1e-14, more for a beyond 1000
 * @source Abramowitz, Stegun, as above, 6.5.29 (series) and 6.5.31 (continued fraction, contracted)
 */
export function gammaShares(a: number, x: number): Shares {
  if (!(a > 0 && x >= 0))
    throw new NumericalError('non-finite', `incomplete gamma function of ${a} at ${x}`, x);
  if (x === 0) return { below: 0, above: 1 };
  if (x === Infinity) return { below: 1, above: 0 };
  const front = Math.exp(a * Math.log(x) - x - logGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let k = 1; k <= MAX_TERMS && term > sum * Number.EPSILON; k++) {
      term *= x / (a + k);
      sum += term;
    }
    return { below: front * sum, above: 1 - front * sum };
  }
  const above = front / continuedFraction(x + 1 - a, (k) => [k * (a - k), x + 2 * k + 1 - a]);
  return { below: 1 - above, above };
}

/**
 * The regularised incomplete beta function I_x(a, b), below, and 1 - I_x(a, b), above.
 *
 * @param a above 0, and b
 * @param x 0 to 1
 * @returns relative error of the smaller about 1e-13, more for parameters beyond 1000
 * @throws NumericalError 'non-finite' for another x, a or b
 * @source Abramowitz, Stegun, as above, 26.5.8 (continued fraction) and 26.5.2 (the other tail)
 */
export function betaShares(a: number, b: number, x: number): Shares {
  if (!(a > 0 && b > 0 && x >= 0 && x <= 1))
    throw new NumericalError('non-finite', `incomplete beta function of ${a}, ${b} at ${x}`, x);
  if (x === 0) return { below: 0, above: 1 };
  if (x === 1) return { below: 1, above: 0 };
  // Beyond the mean the fraction of the other tail is the one that settles quickly.
  if (x > (a + 1) / (a + b + 2)) {
    const { below, above } = betaShares(b, a, 1 - x);
    return { below: above, above: below };
  }
  const front = Math.exp(logGamma(a + b) - logGamma(a) - logGamma(b) + a * Math.log(x) + b * Math.log1p(-x));
  const fraction = continuedFraction(1, (k) => {
    const m = Math.floor(k / 2);
    const numerator =
      k % 2 === 0
        ? (m * (b - m) * x) / ((a + 2 * m - 1) * (a + 2 * m))
        : (-(a + m) * (a + b + m) * x) / ((a + 2 * m) * (a + 2 * m + 1));
    return [numerator, 1];
  });
  const below = front / (a * fraction);
  return { below, above: 1 - below };
}
