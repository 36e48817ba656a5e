import { chiSquaredSurvival } from '../numerics/distributions.ts';

/** Below this chance the words of an answer say that groups scatter more than they explain; no number depends on it. */
export const TOLD_CHANCE = 0.05;

/** How far measurements scatter beyond what their stated uncertainties explain. */
export interface Scatter {
  /** Chance of a larger sum of squares if every stated uncertainty is right; 1 without measurements. */
  readonly chance: number;
  /** Factor on all standard errors. */
  readonly widening: number;
}

/**
 * The factor on all standard errors for measurements that scatter, grown smoothly from 1.
 *
 *   w^2 = 1 + (chi^2/n - 1) (1 - p/p_n)^2  for chi^2 > n, else 1
 *
 * p is the chance of a larger chi^2 and p_n that of one above n, its expectation. Where p is small this is Birge's ratio,
 * chi^2/n; near the expectation, where scatter is no evidence of anything, value and slope both start from those of 1, so that
 * one group moved by a hair moves no error by more.
 *
 * @param chiSquared weighted sum of squares of measurements and priors
 * @param count of the measurements
 * @source Birge, Physical Review 40 (1932) 207, for the ratio; the passage to it is ours
 */
export function scatterOf(chiSquared: number, count: number): Scatter {
  if (count === 0) return { chance: 1, widening: 1 };
  const chance = chiSquaredSurvival(chiSquared, count);
  if (chiSquared <= count) return { chance, widening: 1 };
  const evidence = 1 - chance / chiSquaredSurvival(count, count);
  return { chance, widening: Math.sqrt(1 + (chiSquared / count - 1) * evidence ** 2) };
}
