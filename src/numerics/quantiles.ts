import { chiSquaredSurvival } from './distributions.ts';
import { NumericalError } from './numerical-error.ts';
import { bracketedRoot } from './root.ts';
import { betaShares } from './special-functions.ts';

/** Places are found to this share of themselves: more digits than any table prints. */
const TOLERANCE = 1e-10;
/** Doublings of the upper end of a search before the place is given up. */
const MOST_DOUBLINGS = 200;

/**
 * The chance that a ratio of two variances of normal samples, each over its true value, exceeds `ratio`.
 *
 * @param ratio not negative
 * @param above degrees of freedom of the variance above the line; `below` those of the one below it; fractions allowed
 * @throws NumericalError 'non-finite' for a negative ratio or no degrees of freedom
 * @source Abramowitz, Stegun, Handbook of Mathematical Functions, 1964, 26.6.2
 */
export const varianceRatioSurvival = (ratio: number, above: number, below: number): number =>
  betaShares(below / 2, above / 2, below / (below + above * ratio)).below;

/**
 * The place that a variable of Student's distribution is below with chance `share`.
 *
 * @param share above 0, below 1
 * @param freedom degrees of freedom above 0; Infinity for the normal distribution
 * @throws NumericalError 'non-finite' for another share or freedom
 * @source Abramowitz, Stegun, as above, 26.7.1
 * @checked unit: quantiles.test.ts, against the printed table 26.10
 */
export function studentQuantile(share: number, freedom: number): number {
  refuseUnless(share > 0 && share < 1 && freedom > 0, share);
  if (share < 0.5) return -studentQuantile(1 - share, freedom);
  if (share === 0.5) return 0;
  const outside = 2 * (1 - share);
  const survival = (square: number): number =>
    freedom === Infinity ? chiSquaredSurvival(square, 1) : varianceRatioSurvival(square, 1, freedom);
  return Math.sqrt(placeLeaving(survival, outside));
}

/**
 * The ratio of two variances that is exceeded with chance 1 - `share`.
 *
 * @throws NumericalError 'non-finite' for a share outside 0 to 1 or no degrees of freedom
 * @source Abramowitz, Stegun, as above, 26.6.2
 */
export function varianceRatioQuantile(share: number, above: number, below: number): number {
  refuseUnless(share > 0 && share < 1 && above > 0 && below > 0, share);
  return placeLeaving((ratio) => varianceRatioSurvival(ratio, above, below), 1 - share);
}

/**
 * The sum of squares of `freedom` standard normal variables that is exceeded with chance 1 - `share`.
 *
 * @throws NumericalError 'non-finite' for a share outside 0 to 1 or no degrees of freedom
 * @source Abramowitz, Stegun, as above, 26.4.1
 */
export function chiSquaredQuantile(share: number, freedom: number): number {
  refuseUnless(share > 0 && share < 1 && freedom > 0, share);
  return placeLeaving((sum) => chiSquaredSurvival(sum, freedom), 1 - share);
}

function refuseUnless(usable: boolean, share: number): void {
  if (!usable) throw new NumericalError('non-finite', `no place of a distribution with share ${share}`);
}

/** Where a falling survival function from 1 at 0 leaves this chance. */
function placeLeaving(survival: (x: number) => number, chance: number): number {
  let high = 1;
  for (let i = 0; survival(high) > chance; i++) {
    if (i === MOST_DOUBLINGS)
      throw new NumericalError('not-bracketed', `no place leaves the chance ${chance}`, high);
    high *= 2;
  }
  return bracketedRoot((x) => survival(x) - chance, 0, high, { tolerance: TOLERANCE * high });
}
