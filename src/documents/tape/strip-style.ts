import type { Branch, TapeTick } from './tape-content.ts';
import { type LabelRoom, type Rank, rankOf } from './tape-labels.ts';

/** Lettering and lines of one side of a strip, mm. */
export interface SideStyle {
  readonly size: Readonly<Record<Rank, number>>;
  readonly tick: Readonly<Record<Rank, number>>;
  /** From the edge to the label: the longest tick, then room for a mark's sign or a leader. */
  readonly labelFrom: number;
}

const sides: Readonly<Record<Branch, SideStyle>> = {
  far: { size: { ten: 2.3, five: 1.9, one: 1.5 }, tick: { ten: 3.6, five: 2.7, one: 1.8 }, labelFrom: 5 },
  near: { size: { ten: 1.8, five: 1.7, one: 1.5 }, tick: { ten: 1.7, five: 1.4, one: 1.1 }, labelFrom: 2.8 },
};

/** The style of a side with its numbers `lettering` times as large. */
export function sideStyle(branch: Branch, lettering: number): SideStyle {
  const { size, ...rest } = sides[branch];
  return {
    ...rest,
    size: { ten: size.ten * lettering, five: size.five * lettering, one: size.one * lettering },
  };
}

/** Numbers grow when tens stand this far apart, mm, and reach their largest where a pocket strip still holds "100". */
const ROOMY_TENS = 7;
const LARGEST_LETTERING = 1.3;

/** How much larger than the smallest the numbers of a tape may be, by the middle one of the distances between its tens. */
export function letteringFor(ticks: readonly TapeTick[]): number {
  const tens = ticks
    .filter(({ branch, label }) => branch === 'far' && rankOf(label) === 'ten')
    .map(({ along }) => 1000 * along)
    .toSorted((a, b) => a - b);
  const gaps = tens
    .slice(1)
    .map((at, i) => at - (tens[i] ?? at))
    .toSorted((a, b) => a - b);
  const middle = gaps[Math.floor(gaps.length / 2)] ?? ROOMY_TENS;
  return Math.min(LARGEST_LETTERING, Math.max(1, middle / ROOMY_TENS));
}

const strokes: Readonly<Record<Rank, number>> = { ten: 0.25, five: 0.2, one: 0.13 };
/** Where marks crowd, a tick may fill this share of the way to the next one, so that paper still shows between them. */
const CROWDED_SHARE = 0.45;
/** No printer draws a finer line than this; a stroke of nothing would be drawn as wide as the device likes. */
const FINEST_STROKE = 0.03;

/** The tallest digits reach 0.74 em; the rest is the clear space that keeps neighbouring numbers apart. */
export const roomFor = (size: Readonly<Record<Rank, number>>): LabelRoom => ({
  ten: 0.76 * size.ten + 0.35,
  five: 0.76 * size.five + 0.35,
  one: 0.76 * size.one + 0.7,
});

/** How wide to draw a tick among the others of its column, mm. */
export function strokeAt(at: number, rank: Rank, column: readonly { readonly at: number }[]): number {
  const gaps = column.map((other) => Math.abs(other.at - at)).filter((gap) => gap > 0);
  const nearest = gaps.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  return Math.max(FINEST_STROKE, Math.min(strokes[rank], CROWDED_SHARE * nearest));
}
