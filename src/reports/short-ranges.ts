import type { DisplayUnits } from '../quantities/display-units.ts';
import { fromSi } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import { shortRows } from './short-rows.ts';
import { roundest } from './sureness-words.ts';

/** Of rising ranges, those that the short reading of a report tells of: its rows, and what it says how good marks are at. */
export function shortRanges(ranges: readonly Metres[], units: DisplayUnits): readonly Metres[] {
  const told = new Set([
    ...ranges.slice(0, 1),
    ...shortRows(ranges, (range) => fromSi(range, units.range)),
    ...roundest(
      ranges.map((range) => ({ range })),
      units,
    ).map(({ range }) => range),
    ...ranges.slice(-1),
  ]);
  return ranges.filter((range) => told.has(range));
}
