import { NumericalError } from '../numerics/numerical-error.ts';
import type { CalibrationProblem } from './fit.ts';
import type { Measurement } from './measurement.ts';
import { besideOf, namedValues, parametersOf, priorOf, withParameters } from './parameters.ts';
import { observed, predict } from './prediction.ts';

/**
 * The measurement farthest from what the file's own numbers say before any is fitted, in its standard uncertainties: where a fit
 * fails, the first to look at. One that the arrow of those numbers does not get to is farther than any other; null of none.
 */
export function farthest({ rig, priors, measurements }: CalibrationProblem): Measurement | null {
  const names = parametersOf(priors);
  const values = namedValues(
    names.map((name) => priorOf(priors, name).value),
    names,
  );
  const stated = withParameters(rig, values);
  const off = (measurement: Measurement): number => {
    try {
      const [predicted = Number.NaN] = predict(stated, [measurement], besideOf(values));
      return Math.abs(observed(measurement) - predicted) / measurement.sd;
    } catch (error) {
      if (error instanceof NumericalError) return Number.POSITIVE_INFINITY;
      throw error;
    }
  };
  let found: { readonly measurement: Measurement; readonly off: number } | null = null;
  for (const measurement of measurements) {
    const one = { measurement, off: off(measurement) };
    if (found === null || one.off > found.off) found = one;
  }
  return found === null ? null : found.measurement;
}
