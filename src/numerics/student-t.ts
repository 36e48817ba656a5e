import { NumericalError } from './numerical-error.ts';
import { bracketedRoot } from './root.ts';
import { betaShares, gammaShares, type Shares } from './special-functions.ts';

/** The shares of a symmetric distribution within +-t and beyond, t not negative. */
type Symmetric = (t: number) => Shares;

const normal: Symmetric = (t) => gammaShares(0.5, (t * t) / 2);

const student = (degreesOfFreedom: number): Symmetric => {
  if (degreesOfFreedom === Infinity) return normal;
  if (!(degreesOfFreedom > 0))
    throw new NumericalError('non-finite', `a t distribution of ${degreesOfFreedom} degrees of freedom`);
  return (t) => {
    const scale = degreesOfFreedom + t * t;
    return scale === Infinity
      ? { below: 1, above: 0 }
      : betaShares((t * t) / scale, degreesOfFreedom / scale, 0.5, degreesOfFreedom / 2);
  };
};

function cumulative(shares: Symmetric, t: number): number {
  if (Number.isNaN(t)) throw new NumericalError('non-finite', 'the share below NaN');
  const { below, above } = shares(Math.abs(t));
  if (t < 0) return above / 2;
  return above < below ? 1 - above / 2 : 0.5 + below / 2;
}

/** Relative error of a quantile. */
const QUANTILE_TOLERANCE = 1e-14;
/** Logarithm of the largest quantile looked for; the largest number is near 709. */
const LARGEST_LOG = 700;

/** By the logarithms of the place and of the smaller of the two shares, which are nearly straight far out and far in. */
function quantile(shares: Symmetric, probability: number): number {
  if (!(probability > 0 && probability < 1))
    throw new NumericalError('non-finite', `the quantile for a probability of ${probability}`, probability);
  const within = 2 * Math.abs(probability - 0.5);
  if (within === 0) return 0;
  const beyond = 2 * Math.min(probability, 1 - probability);
  const excess = (logarithm: number): number => {
    const { below, above } = shares(Math.exp(logarithm));
    return within < 0.5 ? Math.log(below / within) : -Math.log(Math.max(above, Number.MIN_VALUE) / beyond);
  };
  let [lo, hi] = [-1, 1];
  while (excess(hi) < 0 && hi < LARGEST_LOG) hi *= 2;
  while (excess(lo) > 0 && lo > -LARGEST_LOG) lo *= 2;
  const size = Math.exp(bracketedRoot(excess, lo, hi, { tolerance: QUANTILE_TOLERANCE }));
  return probability < 0.5 ? -size : size;
}

/**
 * The chance that a Student t variable is below `t`.
 *
 * @param degreesOfFreedom above 0, whole or not; Infinity for the normal distribution
 * @returns relative error about 1e-13 in the nearer tail
 * @source Abramowitz, Stegun, Handbook of Mathematical Functions, 1964, 26.7.1
 */
export const studentTCumulative = (t: number, degreesOfFreedom: number): number =>
  cumulative(student(degreesOfFreedom), t);

/**
 * The value that a Student t variable stays below with the given probability.
 *
 * @param probability between 0 and 1, neither included; a two-sided 95 % interval asks for 0.975
 * @param degreesOfFreedom above 0, whole or not; Infinity for the normal distribution
 * @returns relative error about 1e-13
 * @throws NumericalError 'non-finite' outside these, 'not-bracketed' beyond 1e300
 */
export const studentTQuantile = (probability: number, degreesOfFreedom: number): number =>
  quantile(student(degreesOfFreedom), probability);

/** The chance that a standard normal variable is below `z`. */
export const normalCumulative = (z: number): number => cumulative(normal, z);

/** The value that a standard normal variable stays below with the given probability, which is between 0 and 1. */
export const normalQuantile = (probability: number): number => quantile(normal, probability);

/**
 * The chance that a sum of squares of `degreesOfFreedom` standard normal variables exceeds `sum`.
 *
 * @source Abramowitz, Stegun, as above, 26.4.19
 * @throws NumericalError 'non-finite' for a negative sum or no degrees of freedom
 */
export const chiSquaredSurvival = (sum: number, degreesOfFreedom: number): number =>
  gammaShares(degreesOfFreedom / 2, sum / 2).above;
