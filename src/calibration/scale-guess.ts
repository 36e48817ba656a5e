import { at } from '../numerics/at.ts';
import { DomainError } from '../quantities/domain-error.ts';
import { YARD } from '../quantities/exact.ts';
import { marksFor } from '../sight/marks.ts';
import type { Rig } from '../sight/rig.ts';
import type { SightScale } from '../sight/scale.ts';

/** A mark as shot, for guessing a scale from. */
export interface ScalePoint {
  readonly range: number;
  readonly reading: number;
}

/** What an error names where the readings do not tell it. */
export const SCALE_QUANTITY = 'travel per unit of the scale';

/**
 * A first value of an unknown scale: the straight line through the shot readings against the travel the uncalibrated rig
 * predicts for their ranges. Good enough to start the fit from, which then makes it part of everything else.
 *
 * @param points at least two, at ranges whose marks differ
 * @throws DomainError when the readings do not tell a travel per unit
 */
export function guessScale(rig: Rig, direction: 1 | -1, points: readonly ScalePoint[]): SightScale {
  const travels = marksFor(
    rig,
    points.map(({ range }) => range),
  ).marks.map(({ travel }) => travel as number);
  const mean = (values: readonly number[]): number => values.reduce((a, b) => a + b, 0) / values.length;
  const [meanTravel, meanReading] = [mean(travels), mean(points.map(({ reading }) => reading))];
  const sum = (term: (travel: number, reading: number) => number): number =>
    points.reduce(
      (total, { reading }, i) => total + term(at(travels, i) - meanTravel, reading - meanReading),
      0,
    );
  const perTravel = sum((t, r) => t * r) / sum((t) => t * t);
  const travelPerUnit = direction / perTravel;
  if (!(travelPerUnit > 0) || !Number.isFinite(travelPerUnit))
    throw new DomainError(
      SCALE_QUANTITY,
      travelPerUnit,
      `above 0: do the readings grow the way the file says, ${readAt(farthestApart(points))}?`,
    );
  return { travelPerUnit, direction, atZero: meanReading - meanTravel * perTravel };
}

/** The nearest and the farthest of them. */
function farthestApart(points: readonly ScalePoint[]): readonly ScalePoint[] {
  const sorted = points.toSorted((a, b) => a.range - b.range);
  return [at(sorted, 0), at(sorted, sorted.length - 1)];
}

const readAt = (points: readonly ScalePoint[]): string =>
  points
    .map(({ range, reading }) => `${reading} at ${(range / YARD).toFixed(1)} yd (${range.toFixed(1)} m)`)
    .join(' and ');
