import type { Branch, TapeSource, TapeTick } from './tape-content.ts';
import { type Rank, rankOf } from './tape-labels.ts';

/** Ticks closer than this, mm, run together in print (common practice, no source). */
const LEAST_APART = 0.35;
const STEP: Readonly<Record<Rank, number>> = { ten: 10, five: 5, one: 1 };

/**
 * The ticks that are drawn, by one rule for all tapes of a sheet: single ranges only from the five on from which they stand
 * clear of one another on every tape, fives from such a ten on, tens always. Within the turning point, where marks spread out
 * towards short ranges, the rule runs the other way.
 *
 * @param withNear whether the strips have room for the near branch at all
 */
export function thinnedTicks(
  tapes: readonly TapeSource[],
  withNear: boolean,
): (tape: TapeSource) => readonly TapeTick[] {
  const firstOf = (rank: Rank, branch: Branch): number => {
    const fromHere = tapes.flatMap(({ ticks }) => crowdedFrom(ticks, rank, branch));
    if (branch === 'near') return fromHere.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
    const next = rank === 'one' ? 5 : 10;
    return next * Math.ceil(fromHere.reduce((a, b) => Math.max(a, b), 0) / next);
  };
  const first = {
    far: { one: firstOf('one', 'far'), five: firstOf('five', 'far'), ten: 0 },
    near: { one: firstOf('one', 'near'), five: firstOf('five', 'near'), ten: Number.POSITIVE_INFINITY },
  };
  const isDrawn = ({ label, branch }: TapeTick): boolean => {
    const rank = rankOf(label);
    return branch === 'far' ? label >= first.far[rank] : withNear && label <= first.near[rank];
  };
  return ({ ticks }) => {
    const drawn = ticks.filter(isDrawn);
    if (drawn.length > 0) return drawn;
    const far = ticks.filter(({ branch }) => branch === 'far');
    return far.length > 0 ? far : ticks;
  };
}

/** The outer label of every pair of neighbours, among the multiples of a rank's step, that stand too close together. */
function crowdedFrom(ticks: readonly TapeTick[], rank: Rank, branch: Branch): readonly number[] {
  const column = ticks
    .filter((tick) => tick.branch === branch && tick.label % STEP[rank] === 0)
    .toSorted((a, b) => a.label - b.label);
  return column.slice(1).flatMap((tick, i) => {
    const before = column[i];
    if (before === undefined || Math.abs(tick.along - before.along) * 1000 >= LEAST_APART) return [];
    return [branch === 'far' ? tick.label : before.label];
  });
}
