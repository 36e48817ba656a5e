import { NumericalError } from './numerical-error.ts';
import { gammaShares } from './special-functions.ts';

/**
 * The chance that a standard normal variable is below `z`.
 *
 * @returns relative error about 1e-13 in the nearer tail
 * @throws NumericalError 'non-finite' for NaN
 * @source Abramowitz, Stegun, Handbook of Mathematical Functions, 1964, 26.2.30
 */
export function normalCumulative(z: number): number {
  if (Number.isNaN(z)) throw new NumericalError('non-finite', 'the share below NaN');
  const { below, above } = gammaShares(0.5, (z * z) / 2);
  if (z < 0) return above / 2;
  return above < below ? 1 - above / 2 : 0.5 + below / 2;
}

/**
 * The chance that a sum of squares of `degreesOfFreedom` standard normal variables exceeds `sum`.
 *
 * @source Abramowitz, Stegun, as above, 26.4.19
 * @throws NumericalError 'non-finite' for a negative sum or no degrees of freedom
 */
export const chiSquaredSurvival = (sum: number, degreesOfFreedom: number): number =>
  gammaShares(degreesOfFreedom / 2, sum / 2).above;
