import { at } from '../numerics/at.ts';
import { DECIDED } from '../quantities/estimate.ts';
import { PARAMETER_UNITS, type ParameterName, type Priors, parametersOf, priorOf } from './parameters.ts';

/**
 * `measured`: the marks decide it. `mostly prior`: they hardly touch it. `not separable`: they would, were it not for
 * another.
 */
export type Verdict = 'measured' | 'mostly prior' | 'not separable';

export interface ParameterEstimate {
  readonly name: ParameterName;
  readonly unit: string;
  readonly value: number;
  readonly sd: number;
  readonly priorValue: number;
  readonly priorSd: number;
  readonly verdict: Verdict;
  /** The parameter it is most confused with, when not separable. */
  readonly tiedTo: ParameterName | null;
}

interface Solution {
  readonly parameters: readonly number[];
  readonly jacobian: readonly (readonly number[])[];
  readonly covariance: readonly (readonly number[])[];
}

/**
 * Value, standard error and verdict of every parameter.
 *
 * @param count measurements; the first `count` rows of the Jacobian are theirs, the rest the priors'
 */
export function estimates(
  solution: Solution,
  priors: Priors,
  count: number,
  widening: number,
): ParameterEstimate[] {
  const variance = (i: number, j: number): number => at(at(solution.covariance, i), j);
  const names = parametersOf(priors);
  return names.map((name, i) => {
    const prior = priorOf(priors, name);
    const sd = Math.sqrt(variance(i, i));
    const information = solution.jacobian.slice(0, count).reduce((sum, row) => sum + at(row, i) ** 2, 0);
    const aloneSd = 1 / Math.sqrt(information + 1 / prior.sd ** 2);
    const others = names
      .map((other, j) => ({
        other,
        correlation: Math.abs(variance(i, j)) / Math.sqrt(variance(i, i) * variance(j, j)),
      }))
      .filter(({ other }) => other !== name);
    const yardstick = prior.yardstick ?? prior.sd;
    const verdict = verdictOf(sd / yardstick, aloneSd / yardstick);
    const closest = others.toSorted((a, b) => b.correlation - a.correlation)[0];
    return {
      name,
      unit: PARAMETER_UNITS[name],
      value: at(solution.parameters, i),
      sd: sd * widening,
      priorValue: prior.value,
      priorSd: prior.sd,
      verdict,
      tiedTo: verdict === 'not separable' ? (closest?.other ?? null) : null,
    };
  });
}

/**
 * What the marks did for one unknown.
 *
 * @param left its standard uncertainty over that of before (or over the yardstick of one that was unknown)
 * @param leftWereOthersKnown the same, were all other unknowns known
 */
export function verdictOf(left: number, leftWereOthersKnown: number): Verdict {
  if (left <= DECIDED) return 'measured';
  return leftWereOthersKnown <= DECIDED ? 'not separable' : 'mostly prior';
}
