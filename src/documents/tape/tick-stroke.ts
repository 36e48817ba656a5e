import type { Rank } from './tape-labels.ts';

const strokes: Readonly<Record<Rank, number>> = { ten: 0.25, five: 0.2, one: 0.13 };
/** Where marks crowd, a tick may fill this share of the way to the next one, so that paper still shows between them. */
const CROWDED_SHARE = 0.45;
/** No printer draws a finer line than this; a stroke of nothing would be drawn as wide as the device likes. */
const FINEST_STROKE = 0.03;
/** The outlines of a hollow tick, mm from middle to middle of their lines. */
const HOLLOW = { most: 0.45, least: 0.12 };

type Column = readonly { readonly at: number }[];

function nearestGap(at: number, column: Column): number {
  let nearest = Number.POSITIVE_INFINITY;
  for (const other of column) {
    const gap = Math.abs(other.at - at);
    if (gap > 0 && gap < nearest) nearest = gap;
  }
  return nearest;
}

/** How wide to draw a tick among the others of its column, mm. */
export const strokeAt = (at: number, rank: Rank, column: Column): number =>
  Math.max(FINEST_STROKE, Math.min(strokes[rank], CROWDED_SHARE * nearestGap(at, column)));

/** How high to draw a hollow tick among the others of its column, mm. */
export const hollowHeight = (at: number, column: Column): number =>
  Math.max(HOLLOW.least, Math.min(HOLLOW.most, CROWDED_SHARE * nearestGap(at, column)));
