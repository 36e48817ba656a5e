import type { Calibration } from './fit.ts';
import type { ParameterName } from './parameters.ts';

/** Something the archer should know about a fit, as data; the words are the door's. */
export type Finding =
  | { readonly kind: 'no marks' }
  | { readonly kind: 'one mark' }
  | { readonly kind: 'outlier'; readonly index: number; readonly studentised: number }
  | { readonly kind: 'scatter'; readonly widening: number; readonly chance: number }
  | { readonly kind: 'tied'; readonly parameter: ParameterName; readonly to: ParameterName }
  | { readonly kind: 'far from prior'; readonly parameter: ParameterName; readonly sds: number };

/** Studentised residuals beyond this are called outliers: one in 370 of good groups would be. */
export const OUTLIER = 3;
/** A value this many prior standard errors from what was measured says the measurement itself may be wrong. */
const FAR = 3;

/** What stands out in a calibration, the gravest first. */
export function findings({ residuals, parameters, widening, chance }: Calibration): readonly Finding[] {
  const marks = residuals.filter(({ measurement }) => measurement.kind === 'mark').length;
  const found: Finding[] = [];
  if (residuals.length === 0) found.push({ kind: 'no marks' });
  else if (residuals.length === 1 && marks === 1) found.push({ kind: 'one mark' });
  for (const [index, { studentised }] of residuals.entries())
    if (Math.abs(studentised) > OUTLIER) found.push({ kind: 'outlier', index, studentised });
  if (widening > 1) found.push({ kind: 'scatter', widening, chance });
  for (const { name, tiedTo } of parameters)
    if (tiedTo !== null) found.push({ kind: 'tied', parameter: name, to: tiedTo });
  for (const { name, value, priorValue, priorSd } of parameters) {
    const sds = (value - priorValue) / priorSd;
    if (Math.abs(sds) > FAR) found.push({ kind: 'far from prior', parameter: name, sds });
  }
  return found;
}
