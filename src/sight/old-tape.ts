import { at } from '../numerics/at.ts';
import { type Metres, si } from '../quantities/quantity.ts';
import { type MarkTable, marksFor } from './marks.ts';
import type { Rig } from './rig.ts';

/** A tape that was made for another arrow, bow or air, or by somebody else: where each of its ranges stands along it. */
export interface OldTape {
  /** Beyond its turning point, rising in both. */
  readonly places: readonly { readonly range: Metres; readonly along: Metres }[];
}

/** What an old tape is worth at one range. */
export interface OldMark {
  readonly range: Metres;
  /** The range to set on the old tape for a hit; null where it does not reach. */
  readonly use: Metres | null;
  /** Where the arrow hits with the old tape's own mark of the range, above the aim; null where it has none. */
  readonly height: Metres | null;
}

/**
 * The old tape as it can be read: from its highest place on, since within the turning point a place serves two ranges.
 *
 * @param places in any order
 */
export function oldTape(places: OldTape['places']): OldTape {
  const sorted = places.toSorted((a, b) => a.range - b.range);
  const lowest = sorted.map(({ along }) => along).reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY);
  return { places: sorted.slice(sorted.findIndex(({ along }) => along === lowest)) };
}

/** What is between two neighbours of a rising list, in proportion; null outside of it. */
function between(
  places: OldTape['places'],
  wanted: number,
  [from, to]: readonly ['range' | 'along', 'range' | 'along'],
): Metres | null {
  const i = places.findIndex((place) => place[from] >= wanted - SAME);
  if (i < 0) return null;
  const above = at(places, i);
  if (Math.abs(above[from] - wanted) <= SAME) return above[to];
  if (i === 0) return null;
  const below = at(places, i - 1);
  const share = (wanted - below[from]) / (above[from] - below[from]);
  return si(below[to] + share * (above[to] - below[to]));
}
/** Nearer than any tape is read, m. */
const SAME = 1e-9;

/**
 * How to go on with an old tape that lies with the mark of the zero range where it belongs.
 *
 * Between its marks a tape is read in proportion: with marks a yard apart that is within 0.02 yd of its law.
 *
 * @param ratio of the way along the tape to the travel of the pin, of the old tape as of the new
 * @throws NumericalError when the arrow does not get to a range
 */
export function oldMarks(
  rig: Rig,
  old: OldTape,
  ranges: readonly Metres[],
  ratio: number,
): readonly OldMark[] {
  const table = marksFor(rig, ranges);
  const zero = between(old.places, rig.zeroRange, ['range', 'along']) ?? si<'m'>(0);
  return table.marks.map(({ range, travel, heightPerTravel }) => {
    const own = between(old.places, range, ['range', 'along']);
    return {
      range,
      use: between(old.places, zero + travel * ratio, ['along', 'range']),
      height: own === null ? null : heightAt(table, { range, travel, heightPerTravel }, (own - zero) / ratio),
    };
  });
}

/** Where the arrow hits with another travel than the right one; from the shared paths where they reach. */
function heightAt(
  { paths, shared, zero }: MarkTable,
  {
    range,
    travel,
    heightPerTravel,
  }: { readonly range: number; readonly travel: number; readonly heightPerTravel: number },
  set: number,
): Metres {
  const pin = zero.down + set;
  const inSpan = pin >= shared.span.lo && pin <= shared.span.hi;
  return si(inSpan ? paths.height(pin, range) : heightPerTravel * (set - travel));
}
