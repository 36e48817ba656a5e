import { at } from '../../numerics/at.ts';
import { forwardSolve } from '../../numerics/cholesky.ts';
import { quadraticForm } from '../../numerics/quadratic-form.ts';
import { type MetresPerSecond, si } from '../../quantities/quantity.ts';
import type { Day } from '../measurement.ts';
import { type Verdict, verdictOf } from '../verdict.ts';
import { dot, type LateralGroups, type LateralSolution } from './lateral-solution.ts';

/** The wind across the line of sight that a day's groups speak of, beyond what the file says of it. */
export interface CrosswindEstimate {
  /** Null for groups that name no day: then it is the wind when the farthest of them was shot. */
  readonly day: Day;
  /** Blowing to the right positive. */
  readonly value: MetresPerSecond;
  readonly sd: MetresPerSecond;
  readonly priorSd: MetresPerSecond;
  readonly verdict: Verdict;
}

/**
 * The wind of every day named, and of the day of the farthest group that names none.
 *
 *   w = c' V^-1 r,   var w = s_w² - c' (V^-1 - V^-1 A C A' V^-1) c,   c_i = s_w² w_i P(same day)
 *
 * @param priorSd s_w, 0 where the wind is known: then there is nothing to estimate
 * @source Henderson, Biometrics 31 (1975) 423-447, for the prediction of random effects
 */
export function crosswindEstimates(
  { factor, jacobian, residuals, covariance }: LateralSolution,
  { rows, chances }: LateralGroups,
  priorSd: number,
  widening: number,
): readonly CrosswindEstimate[] {
  if (priorSd === 0) return [];
  const farthest = new Map<Day, number>();
  for (const [i, { mark }] of rows.entries()) {
    const before = farthest.get(mark.day);
    if (before === undefined || mark.range > at(rows, before).mark.range) farthest.set(mark.day, i);
  }
  return [...farthest].map(([day, place]) => {
    const c = rows.map(({ perCrosswind }, i) => priorSd ** 2 * perCrosswind * at(at(chances, place), i));
    const whitened = forwardSolve(factor, c);
    const pull = covariance.map((_, j) =>
      dot(
        whitened,
        jacobian.map((row) => at(row, j)),
      ),
    );
    const told = dot(whitened, whitened) - quadraticForm(covariance, pull);
    const sd = Math.sqrt(Math.max(priorSd ** 2 - told, 0));
    const information = rows.reduce(
      (sum, row, i) => sum + at(at(chances, place), i) * (row.perCrosswind / row.sd) ** 2,
      0,
    );
    const alone = 1 / Math.sqrt(information + 1 / priorSd ** 2);
    return {
      day,
      value: si(dot(whitened, residuals)),
      sd: si(sd * widening),
      priorSd: si(priorSd),
      verdict: verdictOf(sd / priorSd, alone / priorSd),
    };
  });
}
