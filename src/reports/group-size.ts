/** Where one arrow hit, from the aim, m: right and high positive. */
export interface SingleHit {
  readonly right: number;
  readonly high: number;
}

/** A group as an archer speaks of it. */
export interface GroupSize {
  readonly middle: SingleHit;
  /** Between the two arrows farthest apart, centre to centre, m; null for a single arrow. */
  readonly spread: number | null;
}

/** The middle and the size of a group, m; null for no arrow. */
export function groupSize(hits: readonly SingleHit[]): GroupSize | null {
  if (hits.length === 0) return null;
  const mean = (of: (hit: SingleHit) => number): number =>
    hits.reduce((sum, hit) => sum + of(hit), 0) / hits.length;
  const apart = hits.flatMap((a, i) =>
    hits.slice(i + 1).map((b) => Math.hypot(a.right - b.right, a.high - b.high)),
  );
  return {
    middle: { right: mean(({ right }) => right), high: mean(({ high }) => high) },
    spread: apart.length === 0 ? null : Math.max(...apart),
  };
}
