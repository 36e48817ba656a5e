import { at } from '../../numerics/at.ts';

/** Tens are labelled wherever there is a ten, fives and ones only where they find room. */
export type Rank = 'ten' | 'five' | 'one';

export const rankOf = (label: number): Rank => {
  if (label % 10 === 0) return 'ten';
  return label % 5 === 0 ? 'five' : 'one';
};

export interface LabelWish {
  readonly label: number;
  /** Where its tick is, mm along the strip. */
  readonly at: number;
}

export interface PlacedLabel extends LabelWish {
  readonly rank: Rank;
  /** Where the middle of the label is: the tick's place, but for tens that had to give way. */
  readonly middle: number;
}

/** The length of strip that a label occupies, clear space included, mm. */
export type LabelRoom = (label: number) => number;

/** The tens of one column, each labelled; where they crowd they are moved apart by the least sum of squared shifts. */
function placeTens(wishes: readonly LabelWish[], room: LabelRoom): readonly PlacedLabel[] {
  const tens = ofRank(wishes, 'ten');
  const gaps = tens.slice(1).map(({ label }, i) => (room(label) + room(at(tens, i).label)) / 2);
  const spread = leastShift(
    tens.map((ten) => ten.at),
    gaps,
  );
  return tens.map((ten, i) => ({ ...ten, middle: at(spread, i) }));
}

const ofRank = (wishes: readonly LabelWish[], rank: Rank): readonly PlacedLabel[] =>
  wishes
    .filter(({ label }) => rankOf(label) === rank)
    .toSorted((a, b) => a.at - b.at || a.label - b.label)
    .map((wish) => ({ ...wish, rank, middle: wish.at }));

/**
 * Which ranges all the columns of a sheet number, one rule for all of them: every ten; the fives from the one on from which
 * every longer one finds room on every strip; and every one or none.
 *
 * @param columns a column of each strip that is to look alike
 * @param longest whether marks spread out towards long ranges, as they do beyond the turning point; within it they spread out
 *   towards short ones
 */
export function numberedRanges(
  columns: readonly (readonly LabelWish[])[],
  room: LabelRoom,
  longest: 'roomy' | 'crowded',
): ReadonlySet<number> {
  const sign = longest === 'roomy' ? -1 : 1;
  const outwards = (rank: Rank) =>
    [...new Set(columns.flat().map(({ label }) => label))]
      .filter((label) => rankOf(label) === rank)
      .toSorted((a, b) => sign * (a - b));
  const taken = columns.map((wishes) => [...placeTens(wishes, room)]);
  const places = columns.map((wishes) => new Map(wishes.map((wish) => [wish.label, wish.at])));
  const finds = (label: number): boolean =>
    places.every((column, i) => {
      const own = column.get(label);
      return own === undefined || at(taken, i).every((other) => isClear(label, own, other, room));
    });
  const add = (label: number, rank: Rank): void => {
    for (const [i, column] of places.entries()) {
      const own = column.get(label);
      if (own !== undefined) at(taken, i).push({ label, rank, at: own, middle: own });
    }
  };
  const numbered = [...outwards('ten')];
  for (const five of outwards('five')) {
    if (!finds(five)) break;
    add(five, 'five');
    numbered.push(five);
  }
  const ones: number[] = [];
  const wanted = outwards('one');
  for (const one of wanted) {
    if (!finds(one)) break;
    add(one, 'one');
    ones.push(one);
  }
  return new Set([...numbered, ...(longest === 'roomy' && ones.length < wanted.length ? [] : ones)]);
}

const isClear = (label: number, place: number, other: PlacedLabel, room: LabelRoom): boolean =>
  Math.abs(place - other.middle) >= (room(label) + room(other.label)) / 2 - ROUNDING;

/** What sums of doubles leave of two labels that just touch, mm. */
const ROUNDING = 1e-9;

/** The labels of one column: its tens, spread where they crowd, and what else the sheet numbers. */
export const placeLabels = (
  wishes: readonly LabelWish[],
  numbered: ReadonlySet<number>,
  room: LabelRoom,
): readonly PlacedLabel[] => [
  ...placeTens(wishes, room),
  ...(['five', 'one'] as const)
    .flatMap((rank) => ofRank(wishes, rank))
    .filter(({ label }) => numbered.has(label)),
];

/**
 * Positions at least `gaps` apart, in the order given, with the least sum of squared shifts from the wanted ones.
 *
 * With q_i = p_i - (sum of the gaps before i) the condition is that q rises, so this is isotonic regression: neighbours that
 * would fall are pooled at their mean.
 *
 * @param wanted ascending
 * @param gaps between each and the next, one fewer than there are positions
 * @source Barlow, Bartholomew, Bremner, Brunk, Statistical Inference under Order Restrictions, 1972, pool adjacent violators
 */
export function leastShift(wanted: readonly number[], gaps: readonly number[]): readonly number[] {
  const before = wanted.map((_, i) => gaps.slice(0, i).reduce((a, b) => a + b, 0));
  const pools: { mean: number; count: number }[] = [];
  for (const [i, place] of wanted.entries()) {
    let pool = { mean: place - at(before, i), count: 1 };
    for (let last = pools.at(-1); last !== undefined && last.mean > pool.mean; last = pools.at(-1)) {
      pools.pop();
      const count = last.count + pool.count;
      pool = { mean: (last.mean * last.count + pool.mean * pool.count) / count, count };
    }
    pools.push(pool);
  }
  return pools
    .flatMap(({ mean, count }) => Array.from({ length: count }, () => mean))
    .map((q, i) => q + at(before, i));
}
