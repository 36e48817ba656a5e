import { at } from '../numerics/at.ts';
import { atBounds, type Calibration, calibrate } from './fit.ts';
import type { ParameterName } from './parameters.ts';
import { TOLD_CHANCE } from './widening.ts';

/** Something the archer should know about a fit, as data; the words are the door's. */
export type Finding =
  | { readonly kind: 'no marks' }
  | { readonly kind: 'one mark' }
  | { readonly kind: 'outlier'; readonly index: number; readonly studentised: number }
  | { readonly kind: 'layer'; readonly isLaminar: boolean; readonly chance: number }
  | { readonly kind: 'at bound'; readonly parameter: ParameterName }
  | { readonly kind: 'scatter'; readonly widening: number; readonly chance: number }
  | { readonly kind: 'tied'; readonly parameter: ParameterName; readonly to: ParameterName }
  | { readonly kind: 'far from prior'; readonly parameter: ParameterName; readonly sds: number };

/** Studentised residuals beyond this are called outliers: one in 370 of good groups would be. */
export const OUTLIER = 3;
/** A value this many prior standard errors from what was measured says the measurement itself may be wrong. */
const FAR = 3;

/** What stands out in a calibration, the gravest first. */
export function findings(calibration: Calibration): readonly Finding[] {
  const { residuals, parameters, widening, chance, dragPlace } = calibration;
  const marks = residuals.filter(
    ({ measurement }) => measurement.kind === 'mark' || measurement.kind === 'pencil',
  ).length;
  const found: Finding[] = [];
  if (residuals.length === 0) found.push({ kind: 'no marks' });
  else if (residuals.length === 1 && marks === 1) found.push({ kind: 'one mark' });
  for (const parameter of atBounds(calibration)) found.push({ kind: 'at bound', parameter });
  found.push(...outliers(calibration));
  if (dragPlace !== null)
    found.push({ kind: 'layer', isLaminar: dragPlace.isOther, chance: dragPlace.chance });
  if (chance < TOLD_CHANCE) found.push({ kind: 'scatter', widening, chance });
  const told = new Set<string>();
  for (const { name, tiedTo } of parameters) {
    if (tiedTo === null || told.has(tiedTo)) continue;
    told.add(name);
    found.push({ kind: 'tied', parameter: name, to: tiedTo });
  }
  for (const { name, value, priorValue, priorSd } of parameters) {
    const sds = (value - priorValue) / priorSd;
    if (Math.abs(sds) > FAR) found.push({ kind: 'far from prior', parameter: name, sds });
  }
  return found;
}

/** Below this chance marks and measurements contradict each other outright. */
const CONTRADICTION = 1e-4;

/** Whether the fit is one to warn of beside every number that rests on it. */
export const isContradiction = (calibration: Calibration): boolean =>
  calibration.chance < CONTRADICTION || atBounds(calibration).length > 0;

/**
 * Measurements that do not belong with the rest, the worst first. One bad mark drags the fit towards itself and makes its
 * neighbours look bad too, so the worst is set aside, the others are fitted again without it, and judged by that fit; and
 * so on.
 *
 * The fit itself keeps them all: it is for the archer to say whether a reading was written down wrongly.
 */
function outliers(calibration: Calibration): readonly Extract<Finding, { kind: 'outlier' }>[] {
  const found: Extract<Finding, { kind: 'outlier' }>[] = [];
  let left = calibration.residuals.map((_, index) => index);
  let current = calibration;
  while (left.length > 2) {
    const judged = current.residuals.map(({ studentised }, i) => ({ index: at(left, i), studentised }));
    const worst = judged.toSorted((a, b) => Math.abs(b.studentised) - Math.abs(a.studentised))[0];
    if (worst === undefined || Math.abs(worst.studentised) <= OUTLIER) break;
    found.push({ kind: 'outlier', ...worst });
    left = left.filter((index) => index !== worst.index);
    const { problem } = calibration;
    current = calibrate({
      ...problem,
      measurements: left.flatMap((index) => problem.measurements[index] ?? []),
    });
  }
  return found;
}
