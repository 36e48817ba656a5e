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

/** The length of strip that a label of each rank occupies, clear space included, mm. */
export type LabelRoom = Readonly<Record<Rank, number>>;

/**
 * Labels for one column of ticks, none over another.
 *
 * Tens always get a label; where they crowd they are moved apart by the least sum of squared shifts, in their order.
 * A five keeps its tick's height or is left out. Ones are labelled between two fives all together or not at all: a lone
 * number among bare ticks reads as a mistake.
 */
export function placeLabels(wishes: readonly LabelWish[], room: LabelRoom): readonly PlacedLabel[] {
  const of = (rank: Rank) =>
    wishes
      .filter(({ label }) => rankOf(label) === rank)
      .toSorted((a, b) => a.at - b.at || a.label - b.label)
      .map((wish): PlacedLabel => ({ ...wish, rank, middle: wish.at }));
  const tens = of('ten');
  const spread = leastShift(
    tens.map(({ at }) => at),
    room.ten,
  );
  const placed = tens.map((label, i) => ({ ...label, middle: spread[i] ?? label.at }));
  const clear = (label: PlacedLabel, others: readonly PlacedLabel[]) =>
    others.every(
      (other) => Math.abs(label.middle - other.middle) >= (room[label.rank] + room[other.rank]) / 2,
    );
  for (const five of of('five')) if (clear(five, placed)) placed.push(five);
  for (const group of groupedByFives(of('one'))) {
    const fit = group.every(
      (one) =>
        clear(one, placed) &&
        clear(
          one,
          group.filter((other) => other !== one),
        ),
    );
    if (fit) placed.push(...group);
  }
  return placed;
}

function groupedByFives(ones: readonly PlacedLabel[]): readonly (readonly PlacedLabel[])[] {
  const groups = new Map<number, PlacedLabel[]>();
  for (const one of ones) {
    const key = Math.floor(one.label / 5);
    groups.set(key, [...(groups.get(key) ?? []), one]);
  }
  return [...groups.values()];
}

/**
 * Positions at least `gap` apart, in the order given, with the least sum of squared shifts from the wanted ones.
 *
 * With q_i = p_i - i gap the condition is that q rises, so this is isotonic regression: neighbours that would fall are
 * pooled at their mean.
 *
 * @param wanted ascending
 * @source Barlow, Bartholomew, Bremner, Brunk, Statistical Inference under Order Restrictions, 1972, pool adjacent violators
 */
export function leastShift(wanted: readonly number[], gap: number): readonly number[] {
  const pools: { mean: number; count: number }[] = [];
  for (const [i, at] of wanted.entries()) {
    let pool = { mean: at - i * gap, count: 1 };
    for (let before = pools.at(-1); before !== undefined && before.mean > pool.mean; before = pools.at(-1)) {
      pools.pop();
      const count = before.count + pool.count;
      pool = { mean: (before.mean * before.count + pool.mean * pool.count) / count, count };
    }
    pools.push(pool);
  }
  return pools
    .flatMap(({ mean, count }) => Array.from({ length: count }, () => mean))
    .map((q, i) => q + i * gap);
}
