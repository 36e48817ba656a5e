import { at } from '../../numerics/at.ts';
import { type Verdict, verdictOf } from '../verdict.ts';
import type { LateralFit } from './lateral-fit.ts';
import type { LateralUnknown } from './lateral-mark.ts';

/** What the groups say about one cause of sideways misses. */
export interface LateralEstimate {
  readonly name: LateralUnknown;
  readonly value: number;
  readonly sd: number;
  readonly priorValue: number;
  readonly priorSd: number;
  readonly verdict: Verdict;
  /** The cause it is most confused with, and how much, when not separable. */
  readonly tiedTo: { readonly name: LateralUnknown; readonly correlation: number } | null;
}

/** Value, standard error and verdict of every cause. */
export function lateralEstimates(fit: LateralFit): readonly LateralEstimate[] {
  const { unknowns, values, covariance: C, priors, widening } = fit;
  return unknowns.map((name, i) => {
    const prior = priors[name];
    const sd = Math.sqrt(at(at(C, i), i));
    const alone = 1 / Math.sqrt(information(fit, i) + 1 / prior.sd ** 2);
    const verdict = verdictOf(sd / widening / prior.sd, alone / prior.sd);
    return {
      name,
      value: at(values, i),
      sd,
      priorValue: prior.value,
      priorSd: prior.sd,
      verdict,
      tiedTo: verdict === 'not separable' ? closest(fit, i) : null,
    };
  });
}

const information = ({ residuals }: LateralFit, i: number): number =>
  residuals.reduce((sum, { slopes, sd }) => sum + (at(slopes, i) / sd) ** 2, 0);

function closest({ unknowns, covariance: C }: LateralFit, i: number): LateralEstimate['tiedTo'] {
  const element = (a: number, b: number): number => at(at(C, a), b);
  const others = unknowns.map((name, j) => ({
    name,
    correlation: element(i, j) / Math.sqrt(element(i, i) * element(j, j)),
    other: j !== i,
  }));
  const found = others
    .filter(({ other }) => other)
    .toSorted((a, b) => Math.abs(b.correlation) - Math.abs(a.correlation))[0];
  return found === undefined ? null : { name: found.name, correlation: found.correlation };
}

/** Two effects more alike than this cannot be told apart by any groups that people shoot. */
const ALIKE = 0.99;

/** Whether a likeness of two effects is so near 1 or -1 that only their sum is known. */
export const isAlike = (likeness: number | null): boolean => likeness !== null && Math.abs(likeness) > ALIKE;

/**
 * How alike a lean and the arrow's spin look in these groups: the cosine between their weighted effects, 1 or −1 when nothing can
 * tell them apart, null when there are no groups or the arrow does not spin.
 */
export function leanSpinLikeness(fit: LateralFit): number | null {
  const [plumb, spin] = [fit.unknowns.indexOf('plumb'), fit.unknowns.indexOf('side_force')];
  if (plumb < 0 || spin < 0) return null;
  const sum = (a: number, b: number): number =>
    fit.residuals.reduce((total, { slopes, sd }) => total + (at(slopes, a) * at(slopes, b)) / sd ** 2, 0);
  const size = Math.sqrt(sum(plumb, plumb) * sum(spin, spin));
  return size > 0 ? sum(plumb, spin) / size : null;
}
