import { at } from '../../numerics/at.ts';
import { forwardSolve } from '../../numerics/cholesky.ts';
import { chiSquaredSurvival } from '../../numerics/distributions.ts';
import { inverseSymmetric, type Rows, solveSymmetric } from '../../numerics/linear-algebra.ts';
import type { WhitenedFit } from '../judged-residuals.ts';
import type { LateralMark, LateralPriors, LateralUnknown } from './lateral-mark.ts';

/** One group, and what each cause would do to it. */
export interface LateralRow {
  readonly mark: LateralMark;
  /** What the rig does not explain of where it was, m. */
  readonly left: number;
  readonly spin: number;
  /** d(lateral)/d(cause), the two shapes of a swing at the end. */
  readonly slopes: readonly number[];
  readonly perCrosswind: number;
  /** Of its own, m. */
  readonly sd: number;
}

/** Groups with errors that days have in common: L with L L' their covariance. */
export interface LateralGroups {
  readonly rows: readonly LateralRow[];
  /** That two of them were shot on one day. */
  readonly chances: Rows;
  readonly factor: Rows;
}

export interface LateralSolution extends WhitenedFit {
  readonly unknowns: readonly LateralUnknown[];
  readonly values: readonly number[];
  readonly chiSquared: number;
  readonly chance: number;
}

/**
 * Maximum a posteriori values of the unknowns.
 *
 *   (A' V^-1 A + P) v = A' V^-1 r + P v0
 *
 * r what the rig does not explain, V its covariance, A the slopes, P and v0 of the priors.
 */
export function solveLateral(
  { rows, factor }: Omit<LateralGroups, 'chances'>,
  unknowns: readonly LateralUnknown[],
  priors: LateralPriors,
): LateralSolution {
  const prior = unknowns.map((name) => priors[name]);
  const columns = prior.map((_, i) =>
    forwardSolve(
      factor,
      rows.map(({ slopes }) => at(slopes, i)),
    ),
  );
  const seen = forwardSolve(
    factor,
    rows.map(({ left }) => left),
  );
  const normal = prior.map(({ sd }, i) =>
    prior.map((_, j) => dot(at(columns, i), at(columns, j)) + (i === j ? 1 / sd ** 2 : 0)),
  );
  const values = solveSymmetric(
    normal,
    prior.map(({ value, sd }, i) => dot(at(columns, i), seen) + value / sd ** 2),
  );
  const residuals = seen.map((r, k) =>
    values.reduce((left, value, i) => left - value * at(at(columns, i), k), r),
  );
  const pull = prior.reduce((sum, { value, sd }, i) => sum + ((at(values, i) - value) / sd) ** 2, 0);
  const chiSquared = dot(residuals, residuals) + pull;
  return {
    unknowns,
    values,
    factor,
    jacobian: rows.map((_, k) => columns.map((column) => at(column, k))),
    residuals,
    covariance: inverseSymmetric(normal),
    chiSquared,
    chance: rows.length === 0 ? 1 : chiSquaredSurvival(chiSquared, rows.length),
  };
}

export const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * at(b, i), 0);
