import { numberText } from './number-text.ts';
import type { Branch, TapeContent, TapeMark, TapeTick } from './tape-content.ts';
import { type LabelRoom, type PlacedLabel, placeLabels, type Rank, rankOf } from './tape-labels.ts';
import { textWidth } from './text-measure.ts';

/** Lettering and lines of one side of a strip, mm. */
export interface SideStyle {
  readonly size: Readonly<Record<Rank, number>>;
  readonly tick: Readonly<Record<Rank, number>>;
  /** From the edge to the label: the longest tick, then room for a mark's sign or a leader. */
  readonly labelFrom: number;
}

const sides: Readonly<Record<Branch, SideStyle>> = {
  far: { size: { ten: 2.3, five: 1.9, one: 1.5 }, tick: { ten: 3.6, five: 2.7, one: 1.8 }, labelFrom: 5 },
  near: { size: { ten: 1.8, five: 1.7, one: 1.5 }, tick: { ten: 1.7, five: 1.4, one: 1.1 }, labelFrom: 3 },
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
const ROOMY = 7;
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
  const middle = gaps[Math.floor(gaps.length / 2)] ?? ROOMY;
  return Math.min(LARGEST_LETTERING, Math.max(1, middle / ROOMY));
}

const strokes: Readonly<Record<Rank, number>> = { ten: 0.25, five: 0.2, one: 0.13 };
/** Where marks crowd, a tick may fill this share of the way to the next one, so that paper still shows between them. */
const CROWDED_SHARE = 0.45;
/** No printer draws a finer line than this; a stroke of nothing would be drawn as wide as the device likes. */
const FINEST_STROKE = 0.03;

/** The tallest digits reach 0.74 em; the rest is the clear space that keeps neighbouring numbers apart. */
const roomFor = (size: Readonly<Record<Rank, number>>): LabelRoom => ({
  ten: 0.76 * size.ten + 0.35,
  five: 0.76 * size.five + 0.35,
  one: 0.76 * size.one + 0.7,
});

const HEAD = 7.6;
const FOOT = 2.5;
const NARROWEST = 12;
const BETWEEN_COLUMNS = 0.7;

export interface StripTick {
  readonly label: number;
  readonly rank: Rank;
  readonly branch: Branch;
  readonly y: number;
  readonly stroke: number;
}

export interface StripLabel extends PlacedLabel {
  readonly branch: Branch;
  readonly text: string;
}

/** One strip, measured but not drawn: mm from its own top; every y of a tick is the mark itself, never rounded. */
export interface Strip {
  readonly name: string;
  readonly lettering: number;
  readonly height: number;
  readonly ticks: readonly StripTick[];
  readonly labels: readonly StripLabel[];
  readonly shot: readonly { readonly y: number; readonly branch: Branch }[];
  readonly zero: { readonly y: number; readonly branch: Branch; readonly shot: boolean };
}

export interface StripSource {
  readonly name: string;
  readonly lettering: number;
  readonly ticks: readonly TapeTick[];
  readonly calibration: readonly TapeMark[];
}

/** A mark shot this close to the zero, m, shares its sign: nearer than any printer can show. */
const SAME_PLACE = 2e-5;

export const isAtZero = (mark: TapeMark, zero: TapeContent['zero']): boolean =>
  Math.abs(mark.along) < SAME_PLACE && mark.branch === zero.branch;

/** Measure one strip: the head first, then the longest reach of ticks and labels, whichever way ranges run. */
export function layOutStrip(source: StripSource, content: Pick<TapeContent, 'increases' | 'zero'>): Strip {
  const down = content.increases === 'down' ? 1000 : -1000;
  const wishes = source.ticks.map((tick) => ({
    label: tick.label,
    branch: tick.branch,
    at: down * tick.along,
  }));
  const columns = {
    far: wishes.filter(({ branch }) => branch === 'far'),
    near: wishes.filter(({ branch }) => branch === 'near'),
  };
  const labels = (['far', 'near'] as const).flatMap((branch) => {
    return placeLabels(columns[branch], roomFor(sideStyle(branch, source.lettering).size)).map(
      (label): StripLabel => ({ ...label, branch, text: numberText(label.label) }),
    );
  });
  const shot = source.calibration
    .filter((mark) => !isAtZero(mark, content.zero))
    .map(({ along, branch }) => ({ at: down * along, branch }));
  const reach = [
    0,
    ...wishes.map(({ at }) => at),
    ...shot.map(({ at }) => at),
    ...labels.flatMap(({ middle, rank, branch }) => {
      const half = roomFor(sideStyle(branch, source.lettering).size)[rank] / 2;
      return [middle - half, middle + half];
    }),
  ];
  const top = HEAD - reach.reduce((a, b) => Math.min(a, b));
  return {
    name: source.name,
    lettering: source.lettering,
    height: top + reach.reduce((a, b) => Math.max(a, b)) + FOOT,
    ticks: wishes.map(({ label, branch, at }) => ({
      label,
      branch,
      rank: rankOf(label),
      y: top + at,
      stroke: strokeAt(at, rankOf(label), columns[branch]),
    })),
    labels: labels.map((label) => ({ ...label, at: top + label.at, middle: top + label.middle })),
    shot: shot.map(({ at, branch }) => ({ y: top + at, branch })),
    zero: {
      y: top,
      branch: content.zero.branch,
      shot: source.calibration.some((mark) => isAtZero(mark, content.zero)),
    },
  };
}

function strokeAt(at: number, rank: Rank, column: readonly { readonly at: number }[]): number {
  const gaps = column.map((other) => Math.abs(other.at - at)).filter((gap) => gap > 0);
  const nearest = gaps.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  return Math.max(FINEST_STROKE, Math.min(strokes[rank], CROWDED_SHARE * nearest));
}

/** The width that holds every strip's two columns of labels side by side, mm: all strips of a sheet are cut alike. */
export function stripWidth(strips: readonly Strip[]): number {
  const widest = (branch: Branch) =>
    strips
      .flatMap(({ labels, lettering }) =>
        labels
          .filter((label) => label.branch === branch)
          .map(({ text, rank }) =>
            textWidth(text, sideStyle(branch, lettering).size[rank], rank === 'ten' ? 'bold' : 'regular'),
          ),
      )
      .reduce((a, b) => Math.max(a, b), 0);
  const near = strips.some(({ ticks }) => ticks.some(({ branch }) => branch === 'near'))
    ? sides.near.labelFrom + widest('near')
    : 0;
  return Math.max(NARROWEST, sides.far.labelFrom + widest('far') + BETWEEN_COLUMNS + near);
}
