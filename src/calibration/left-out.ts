import { at } from '../numerics/at.ts';
import { type Tried, tried } from './agreement.ts';
import type { Calibration, CalibrationProblem } from './fit.ts';

/** What the others say when one measurement is left out. */
export interface LeftOut extends Tried {
  /** Of the measurement in the problem. */
  readonly index: number;
}

/** Up to so many measurements each is left out in turn; of more only those that a straight model finds most promising. */
const ALL_OF = 10;
/** How many of many are tried: the fit of three hundred marks takes a third of a second. */
const MOST_TRIED = [
  { upTo: 40, fits: 6 },
  { upTo: Number.POSITIVE_INFINITY, fits: 3 },
] as const;

/**
 * The fits without one measurement each.
 *
 * In a straight model chi-squared falls by the square of the studentised residual when its measurement is left out, which costs
 * no fit; among many measurements only the largest are fitted again.
 *
 * @param fit of all of them; null where it was not found, and then as many as are allowed are tried in order
 */
export function leftOut(problem: CalibrationProblem, fit: Calibration | null): readonly LeftOut[] {
  const { measurements } = problem;
  return promising(measurements.length, fit).flatMap((index): readonly LeftOut[] => {
    const rest = tried(without(problem, [index]));
    return rest === null ? [] : [{ index, ...rest }];
  });
}

function promising(count: number, fit: Calibration | null): readonly number[] {
  const all = Array.from({ length: count }, (_, i) => i);
  if (count <= ALL_OF) return all;
  if (fit !== null && isHopeless(fit)) return [];
  const most = MOST_TRIED.find(({ upTo }) => count <= upTo)?.fits;
  const sizes = all.map((i) => (fit === null ? 0 : Math.abs(at(fit.residuals, i).studentised)));
  const ordered = all.toSorted((a, b) => at(sizes, b) - at(sizes, a)).slice(0, most);
  const largest = at(sizes, at(ordered, 0));
  return count <= NEAR_RIVALS_OF ? ordered : ordered.filter((i) => at(sizes, i) >= RIVAL * largest);
}

/** Of more than this, those are tried that may come near the largest: leaving out one of half its size explains a quarter. */
const NEAR_RIVALS_OF = 40;
const RIVAL = 0.8;

/** Where even several as large as the largest residual, taken away, would leave chi-squared far beyond what is expected. */
function isHopeless({ residuals, chiSquared }: Calibration): boolean {
  const largest = Math.max(...residuals.map(({ studentised }) => Math.abs(studentised)));
  return chiSquared - SEVERAL * largest ** 2 > FAR_BEYOND * residuals.length;
}
const SEVERAL = 4;
const FAR_BEYOND = 3;

/** The problem without some of its measurements. */
export const without = (problem: CalibrationProblem, indices: readonly number[]): CalibrationProblem => ({
  ...problem,
  measurements: problem.measurements.filter((_, i) => !indices.includes(i)),
});
