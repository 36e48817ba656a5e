import { rangeAsVariance } from '../../numerics/normal-range.ts';
import type { Metres } from '../../quantities/quantity.ts';
import type { PlaceSpread } from './line-grid.ts';
import { squaresAbout } from './sample.ts';

/** Arrows shot at a line with the rest at one place. */
export interface LineShots {
  readonly position: Metres;
  readonly range: Metres;
  /** How far each hit off the line, or how far apart the two outermost of so many were. */
  readonly hits: readonly Metres[] | { readonly spread: Metres; readonly arrows: number };
}

/**
 * The spread at each place of the rest, each group about its own mean, those at one place together. Groups shot at another range
 * than the last count as if they had been shot there, by the metre of range.
 */
export function placesOf(shots: readonly LineShots[], range: number): readonly PlaceSpread[] {
  const places = new Map<number, { squares: number; freedom: number }>();
  for (const shot of shots) {
    const key = Number(shot.position.toFixed(SAME_PLACE_DIGITS));
    const scale = (range / shot.range) ** 2;
    const { squares, freedom } = squaresOf(shot.hits);
    const before = places.get(key);
    places.set(key, {
      squares: squares * scale + (before === undefined ? 0 : before.squares),
      freedom: freedom + (before === undefined ? 0 : before.freedom),
    });
  }
  return [...places]
    .map(([position, { squares, freedom }]) => ({ position, variance: squares / freedom, freedom }))
    .toSorted((a, b) => a.position - b.position);
}

/** A rest is read to a hundredth of a millimetre at best: decimals of a metre. */
const SAME_PLACE_DIGITS = 6;

function squaresOf(hits: LineShots['hits']): { readonly squares: number; readonly freedom: number } {
  if (!('spread' in hits)) return { squares: squaresAbout(hits), freedom: hits.length - 1 };
  const { factor, freedom } = rangeAsVariance(hits.arrows);
  return { squares: freedom * (factor * hits.spread) ** 2, freedom };
}
