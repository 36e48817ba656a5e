import { type Disagreement, disagreementOf } from './disagreement.ts';
import { atBounds, type Calibration } from './fit.ts';
import type { ParameterName } from './parameters.ts';
import { isSightMark } from './sight-mark.ts';
import { TOLD_CHANCE } from './widening.ts';

/** Something the archer should know about a fit, as data; the words are the door's. */
export type Finding =
  | { readonly kind: 'no marks' }
  | { readonly kind: 'one mark' }
  /** What was measured contradicts itself; the disagreement says what. */
  | { readonly kind: 'contradiction' }
  | { readonly kind: 'outlier'; readonly index: number; readonly studentised: number }
  /** One of these does not belong with the rest, and which cannot be told. */
  | { readonly kind: 'one of several'; readonly indices: readonly number[] }
  /** All would agree far better with the ranges in the other unit. */
  | { readonly kind: 'other unit'; readonly written: 'yd' | 'm' }
  | { readonly kind: 'layer'; readonly isLaminar: boolean; readonly chance: number }
  | { readonly kind: 'at bound'; readonly parameter: ParameterName }
  | { readonly kind: 'scatter'; readonly widening: number; readonly chance: number }
  | { readonly kind: 'tied'; readonly parameter: ParameterName; readonly to: ParameterName }
  | { readonly kind: 'far from prior'; readonly parameter: ParameterName; readonly sds: number };

/** A value this many prior standard errors from what was measured says the measurement itself may be wrong. */
const FAR = 3;

/**
 * What stands out in a calibration, the gravest first.
 *
 * @param disagreement of everything that was measured; the calibration may be of what agrees of it
 */
export function findings(
  calibration: Calibration,
  disagreement: Disagreement | null = disagreementOf(calibration),
): readonly Finding[] {
  const { residuals, parameters, widening, chance, dragPlace } = calibration;
  const marks = residuals.filter(({ measurement }) => isSightMark(measurement)).length;
  const found: Finding[] = [];
  if (residuals.length === 0) found.push({ kind: 'no marks' });
  else if (residuals.length === 1 && marks === 1) found.push({ kind: 'one mark' });
  found.push(...disagreements(calibration, disagreement));
  for (const parameter of atBounds(calibration)) found.push({ kind: 'at bound', parameter });
  if (dragPlace !== null)
    found.push({ kind: 'layer', isLaminar: dragPlace.isOther, chance: dragPlace.chance });
  const isContradiction = disagreement?.isContradiction === true;
  // What contradicts is told with its likely causes, which a wider error is not.
  if (chance < TOLD_CHANCE && !isContradiction) found.push({ kind: 'scatter', widening, chance });
  const told = new Set<string>();
  for (const { name, tiedTo } of parameters) {
    if (tiedTo === null || told.has(tiedTo)) continue;
    told.add(name);
    found.push({ kind: 'tied', parameter: name, to: tiedTo });
  }
  // Wrong marks pull every number away from its measurement, which then is not what to measure again.
  if (isContradiction) return found;
  for (const { name, value, priorValue, priorSd } of parameters) {
    const sds = (value - priorValue) / priorSd;
    if (Math.abs(sds) > FAR) found.push({ kind: 'far from prior', parameter: name, sds });
  }
  return found;
}

function disagreements(calibration: Calibration, disagreement: Disagreement | null): readonly Finding[] {
  if (disagreement === null) return [];
  const { explanations, worst } = disagreement;
  const { residuals } = calibration;
  const placeOf = (one: unknown): number => residuals.findIndex(({ measurement }) => measurement === one);
  if (disagreement.isContradiction) {
    const [first, second] = explanations;
    const isSole = second === undefined && first?.explanation.kind === 'mark';
    // It has no place among the residuals of a fit that leaves it out.
    return [
      { kind: 'contradiction' },
      ...(isSole ? outliers(calibration, [placeOf(first.explanation.measurement)]) : []),
    ];
  }
  const indices = explanations.flatMap(({ explanation }) =>
    explanation.kind === 'mark' ? [placeOf(explanation.measurement)] : [],
  );
  const units = explanations.flatMap(({ explanation }): readonly Finding[] =>
    explanation.kind === 'other unit' ? [{ kind: 'other unit', written: explanation.written }] : [],
  );
  return [
    ...outliers(calibration, explanations.length === 0 ? worst.slice(0, 1).map(placeOf) : indices),
    ...units,
  ];
}

/** One that stands out is an outlier; of several each may be. */
function outliers({ residuals }: Calibration, indices: readonly number[]): readonly Finding[] {
  const [index] = indices;
  if (index === undefined) return [];
  if (indices.length > 1) return [{ kind: 'one of several', indices }];
  const residual = residuals[index];
  return residual === undefined ? [] : [{ kind: 'outlier', index, studentised: residual.studentised }];
}
