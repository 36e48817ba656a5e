import { at } from '../../numerics/at.ts';
import { backwardSolve, choleskyFactor } from '../../numerics/cholesky.ts';
import { chiSquaredSurvival } from '../../numerics/distributions.ts';
import { inverseSymmetric } from '../../numerics/linear-algebra.ts';
import type { Rig } from '../../sight/rig.ts';
import { sameDayChances } from '../days.ts';
import { studentised } from '../judged-residuals.ts';
import { scatterOf, TOLD_CHANCE } from '../widening.ts';
import { type CrosswindEstimate, crosswindEstimates } from './crosswind.ts';
import { type LateralMark, type LateralPriors, type LateralUnknown, USUAL_PRIORS } from './lateral-mark.ts';
import { LATERAL_CAUSES, predictLateral } from './lateral-model.ts';
import {
  dot,
  type LateralGroups,
  type LateralRow,
  type LateralSolution,
  solveLateral,
} from './lateral-solution.ts';
import { launchSwing } from './launch-swing.ts';

/** The straight parts, the curved parts, and (when the residuals ask for it) a swing at the start, fitted to groups. */
export interface LateralFit {
  readonly unknowns: readonly LateralUnknown[];
  readonly values: readonly number[];
  /** In the order of `unknowns`, with `widening` applied. */
  readonly covariance: readonly (readonly number[])[];
  readonly priors: LateralPriors;
  readonly residuals: readonly LateralResidual[];
  /**
   * What wind across the line of sight the groups speak of, beyond the rig's: on each day named, or when the farthest was shot.
   */
  readonly crosswinds: readonly CrosswindEstimate[];
  /** Weighted squares of residuals and of departures from the priors; as many as marks are expected. */
  readonly chiSquared: number;
  /** Chance of a larger one if all is as stated. */
  readonly chance: number;
  readonly widening: number;
  readonly launch: LaunchFinding;
}

interface LateralResidual {
  readonly mark: LateralMark;
  /** Observed less fitted, the day's wind with it, m. */
  readonly residual: number;
  readonly studentised: number;
  /**
   * What was observed with the fitted windage, offset and wind (and swing), and the rig's wind and cant, taken off, m: the curved
   * part.
   */
  readonly curved: number;
  /** Standard uncertainty of the group's centre with that of a deliberate cant, m. */
  readonly sd: number;
  /** d(lateral)/d(unknown), in the order of `unknowns`. */
  readonly slopes: readonly number[];
}

/**
 * Whether the residuals asked for a swing at the start, by the chance of so great a drop of `chiSquared` without one; `not to be
 * seen` where groups as these would not show even a usual one.
 */
type LaunchFinding =
  | { readonly kind: 'not asked for' }
  | { readonly kind: 'not to be seen' }
  | { readonly kind: 'does not help'; readonly chance: number }
  | { readonly kind: 'seen'; readonly chance: number };

/** Level of the tests for a swing at the start: chance of so great a drop of `chiSquared` without one. */
const SWING_LEVEL = 0.01;

/**
 * Maximum a posteriori windage, offset, plumb error and side force from groups shot at several ranges; without groups, the
 * priors.
 *
 * A wind across the line of sight moves all groups of a day together, and its path is curved as a lean's is: it stands in the
 * covariance of the groups, V_ij = s_i² [i = j] + s_w² w_i w_j P(same day), so that the lean's error carries it. Where the
 * residuals are larger than all that allows (5 %), a swing at the start is tried and kept when it earns its two shapes (1 %).
 */
export function fitLateral(
  rig: Rig,
  marks: readonly LateralMark[],
  priors: LateralPriors = USUAL_PRIORS,
): LateralFit {
  const rows = rowsOf(rig, marks);
  const chances = sameDayChances(marks);
  const covariance = rows.map(({ sd, perCrosswind }, i) =>
    rows.map((other, j) => {
      const shared = at(at(chances, i), j) * perCrosswind * other.perCrosswind;
      return priors.crosswindSd ** 2 * shared + (i === j ? sd ** 2 : 0);
    }),
  );
  const groups: LateralGroups = { rows, chances, factor: choleskyFactor(covariance) };
  const plain = solveLateral(groups, LATERAL_CAUSES, priors);
  const swinging = solveLateral(groups, [...LATERAL_CAUSES, ...SWING], priors);
  if (plain.chance >= TOLD_CHANCE) {
    const kind = couldShowSwing(swinging, priors) ? 'not asked for' : 'not to be seen';
    return finished(plain, groups, priors, { kind });
  }
  const chance = chanceOfDrop(plain.chiSquared, swinging.chiSquared, marks.length);
  return chance < SWING_LEVEL
    ? finished(swinging, groups, priors, { kind: 'seen', chance })
    : finished(plain, groups, priors, { kind: 'does not help', chance });
}

/** The two shapes of a swing. */
const SWING = ['tail_left', 'turning'] as const;

function rowsOf(rig: Rig, marks: readonly LateralMark[]): readonly LateralRow[] {
  const start = launchSwing(rig);
  const free = rig.geometry.freeFlight;
  return predictLateral(rig, marks).map(({ lateral, spin, slopes, perCrosswind }, i) => {
    const mark = at(marks, i);
    const flown = mark.range - free;
    const along = Math.cos(rig.cant + mark.cant);
    return {
      mark,
      left: mark.lateral - lateral,
      spin,
      slopes: [...slopes, along * start.tailLeft(flown), along * start.turning(flown)],
      perCrosswind,
      sd: Math.hypot(mark.sd, at(slopes, LATERAL_CAUSES.indexOf('plumb')) * mark.cantSd),
    };
  });
}

/**
 * Whether a swing of a usual size would show: the drop of chi-squared that it would bring on average, through what the groups say
 * of the two shapes when all else is unknown, against the drop that is asked for.
 */
function couldShowSwing({ unknowns, covariance }: LateralSolution, priors: LateralPriors): boolean {
  const places = SWING.map((name) => unknowns.indexOf(name));
  const information = inverseSymmetric(places.map((i) => places.map((j) => at(at(covariance, i), j))));
  return SWING.some((name, i) => {
    const { sd } = priors[name];
    const drop = at(at(information, i), i) * sd ** 2 - 1;
    return chiSquaredSurvival(Math.max(drop, 0), SWING.length) < SWING_LEVEL;
  });
}

/**
 * Chance that two shapes which are not there would drop χ² from `before` to `after`: the larger of what the stated sizes of the
 * groups say (χ² with 2 degrees of freedom) and what their scatter about the fit says (F with 2 and n − 2), so that mere
 * scatter is not taken for a swing.
 *
 * @source for 2 degrees of freedom of the numerator F's tail is (after/before)^((n − 2)/2)
 */
function chanceOfDrop(before: number, after: number, count: number): number {
  if (count <= SWING.length || after >= before) return 1;
  const byGroups = chiSquaredSurvival(before - after, SWING.length);
  return Math.max(byGroups, (after / before) ** ((count - SWING.length) / 2));
}

function finished(
  solution: LateralSolution,
  groups: LateralGroups,
  priors: LateralPriors,
  launch: LaunchFinding,
): LateralFit {
  const { unknowns, values, covariance, chiSquared } = solution;
  const { rows, chances } = groups;
  const { chance, widening } = scatterOf(chiSquared, rows.length);
  const isCurved = (name: LateralUnknown): boolean => name === 'plumb' || name === 'side_force';
  const judged = studentised(solution);
  // V^-1 r, from which the wind on any day follows.
  const pulled = backwardSolve(solution.factor, solution.residuals);
  return {
    unknowns,
    values,
    covariance: covariance.map((line) => line.map((value) => value * widening ** 2)),
    priors,
    chiSquared,
    chance,
    widening,
    launch,
    crosswinds: crosswindEstimates(solution, groups, priors.crosswindSd, widening),
    residuals: rows.map((row, i) => {
      const slopes = row.slopes.slice(0, unknowns.length);
      const blown =
        priors.crosswindSd ** 2 *
        row.perCrosswind *
        rows.reduce(
          (sum, { perCrosswind }, j) => sum + at(at(chances, i), j) * perCrosswind * at(pulled, j),
          0,
        );
      const straight = unknowns.reduce(
        (sum, name, j) => sum + (isCurved(name) ? 0 : at(values, j) * at(slopes, j)),
        0,
      );
      return {
        mark: row.mark,
        residual: row.left - dot(values, slopes) - blown,
        studentised: at(judged, i),
        curved: row.left + row.spin - straight - blown,
        sd: row.sd,
        slopes,
      };
    }),
  };
}
