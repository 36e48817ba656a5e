import { chiSquaredSurvival } from '../../numerics/distributions.ts';
import { inverseSymmetric, solveSymmetric } from '../../numerics/linear-algebra.ts';
import type { Rig } from '../../sight/rig.ts';
import { quadraticForm } from '../fit.ts';
import { type LateralMark, type LateralPriors, type LateralUnknown, USUAL_PRIORS } from './lateral-mark.ts';
import { LATERAL_CAUSES, predictLateral } from './lateral-model.ts';
import { launchSwing } from './launch-swing.ts';

/** The straight parts, the curved parts, and (when the residuals ask for it) a swing at the start, fitted to groups. */
export interface LateralFit {
  readonly unknowns: readonly LateralUnknown[];
  readonly values: readonly number[];
  /** In the order of `unknowns`, with `widening` applied. */
  readonly covariance: readonly (readonly number[])[];
  readonly priors: LateralPriors;
  readonly residuals: readonly LateralResidual[];
  /** Weighted squares of residuals and of departures from the priors; as many as marks are expected. */
  readonly chiSquared: number;
  /** Chance of a larger one if all is as stated. */
  readonly chance: number;
  readonly widening: number;
  readonly launch: LaunchFinding;
}

interface LateralResidual {
  readonly mark: LateralMark;
  /** Observed less fitted, m. */
  readonly residual: number;
  readonly studentised: number;
  /**
   * What was observed with the fitted windage and offset (and swing), and the rig's wind and cant, taken off, m: the curved
   * part.
   */
  readonly curved: number;
  /** Standard uncertainty of the group's centre with that of a deliberate cant, m. */
  readonly sd: number;
  /** d(lateral)/d(unknown), in the order of `unknowns`. */
  readonly slopes: readonly number[];
}

/** Whether the residuals asked for a swing at the start, by the chance of so great a drop of `chiSquared` without one. */
type LaunchFinding =
  | { readonly kind: 'not asked for' }
  | { readonly kind: 'does not help'; readonly chance: number }
  | { readonly kind: 'seen'; readonly chance: number };

/** Below this chance the residuals are larger than the groups explain. */
const BELIEVED_CHANCE = 0.05;
/** Level of the tests for a swing at the start: chance of so great a drop of `chiSquared` without one. */
const SWING_LEVEL = 0.01;

/**
 * Maximum a posteriori windage, offset, plumb error and side force from groups shot at several ranges; without groups, the
 * priors.
 *
 * A linear problem: (AᵀWA + P) v = AᵀW r + P v₀, with r what the rig does not already explain. Where the residuals are
 * larger than the groups allow (5 %), a swing at the start is tried and kept when it earns its two shapes (1 %); if they
 * are still too large, the errors are widened by √(χ²/n).
 */
export function fitLateral(
  rig: Rig,
  marks: readonly LateralMark[],
  priors: LateralPriors = USUAL_PRIORS,
): LateralFit {
  const predicted = predictLateral(rig, marks);
  const start = launchSwing(rig);
  const free = rig.geometry.freeFlight;
  const rows = marks.map((mark, i): Row => {
    const { lateral, spin, slopes } = predicted[i] ?? NOT_PREDICTED;
    const flown = mark.range - free;
    const along = Math.cos(rig.cant + mark.cant);
    const swung = [along * start.tailLeft(flown), along * start.turning(flown)];
    const plumb = slopes[LATERAL_CAUSES.indexOf('plumb')] ?? 0;
    return {
      mark,
      left: mark.lateral - lateral,
      spin,
      slopes: [...slopes, ...swung],
      sd: Math.hypot(mark.sd, plumb * mark.cantSd),
    };
  });
  const plain = solve(rows, LATERAL_CAUSES, priors);
  if (plain.chance >= BELIEVED_CHANCE) return finished(plain, rows, priors, { kind: 'not asked for' });
  const swinging = solve(rows, [...LATERAL_CAUSES, 'tail_left', 'turning'], priors);
  const chance = chanceOfDrop(plain.chiSquared, swinging.chiSquared, marks.length);
  return chance < SWING_LEVEL
    ? finished(swinging, rows, priors, { kind: 'seen', chance })
    : finished(plain, rows, priors, { kind: 'does not help', chance });
}

/** Shapes of a swing. */
const SHAPES = 2;

/**
 * Chance that two shapes which are not there would drop χ² from `before` to `after`: the larger of what the stated sizes of the
 * groups say (χ² with 2 degrees of freedom) and what their scatter about the fit says (F with 2 and n − 2), so that mere
 * scatter is not taken for a swing.
 *
 * @source for 2 degrees of freedom of the numerator F's tail is (after/before)^((n − 2)/2)
 */
function chanceOfDrop(before: number, after: number, count: number): number {
  if (count <= SHAPES || after >= before) return 1;
  const byGroups = chiSquaredSurvival(before - after, SHAPES);
  return Math.max(byGroups, (after / before) ** ((count - SHAPES) / 2));
}

const NOT_PREDICTED = { lateral: Number.NaN, spin: Number.NaN, slopes: [] };

interface Row {
  readonly mark: LateralMark;
  readonly left: number;
  readonly spin: number;
  readonly slopes: readonly number[];
  readonly sd: number;
}

interface Solution {
  readonly unknowns: readonly LateralUnknown[];
  readonly values: readonly number[];
  readonly covariance: readonly (readonly number[])[];
  readonly chiSquared: number;
  readonly chance: number;
}

function solve(rows: readonly Row[], unknowns: readonly LateralUnknown[], priors: LateralPriors): Solution {
  const prior = unknowns.map((name) => priors[name]);
  const weighted = (of: (row: Row) => number): number =>
    rows.reduce((sum, row) => sum + of(row) / row.sd ** 2, 0);
  const slope = (row: Row, i: number): number => row.slopes[i] ?? 0;
  const normal = prior.map(({ sd }, i) =>
    prior.map((_, j) => weighted((row) => slope(row, i) * slope(row, j)) + (i === j ? 1 / sd ** 2 : 0)),
  );
  const values = solveSymmetric(
    normal,
    prior.map(({ value, sd }, i) => weighted((row) => slope(row, i) * row.left) + value / sd ** 2),
  );
  const misfit = rows.reduce((sum, row) => sum + ((row.left - explained(row, values)) / row.sd) ** 2, 0);
  const pull = prior.reduce((sum, { value, sd }, i) => sum + (((values[i] ?? 0) - value) / sd) ** 2, 0);
  const chiSquared = misfit + pull;
  const chance = rows.length === 0 ? 1 : chiSquaredSurvival(chiSquared, rows.length);
  return { unknowns, values, covariance: inverseSymmetric(normal), chiSquared, chance };
}

const explained = (row: Row, values: readonly number[]): number =>
  values.reduce((sum, value, i) => sum + value * (row.slopes[i] ?? 0), 0);

/** A group that alone decides something has no residual to judge; this keeps 0/0 at 0. */
const SMALLEST_FREEDOM = 1e-9;

function finished(
  solution: Solution,
  rows: readonly Row[],
  priors: LateralPriors,
  launch: LaunchFinding,
): LateralFit {
  const { unknowns, values, covariance, chiSquared, chance } = solution;
  const widening = chance < BELIEVED_CHANCE ? Math.sqrt(chiSquared / rows.length) : 1;
  const isCurved = (i: number): boolean => unknowns[i] === 'plumb' || unknowns[i] === 'side_force';
  return {
    unknowns,
    values,
    covariance: covariance.map((line) => line.map((value) => value * widening ** 2)),
    priors,
    chiSquared,
    chance,
    widening,
    launch,
    residuals: rows.map((row) => {
      const slopes = row.slopes.slice(0, unknowns.length);
      const residual = row.left - explained(row, values);
      const straight = values.reduce(
        (sum, value, i) => sum + (isCurved(i) ? 0 : value * (slopes[i] ?? 0)),
        0,
      );
      const share = quadraticForm(covariance, slopes) / row.sd ** 2;
      return {
        mark: row.mark,
        residual,
        studentised: residual / row.sd / Math.sqrt(Math.max(1 - share, SMALLEST_FREEDOM)),
        curved: row.left + row.spin - straight,
        sd: row.sd,
        slopes,
      };
    }),
  };
}
