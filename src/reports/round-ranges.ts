import { niceTicks } from '../documents/plot/nice-ticks.ts';
import type { DisplayUnits } from '../quantities/display-units.ts';
import { fromSi, toSi } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import { si } from '../quantities/quantity.ts';

export interface Stretch {
  /** m */
  readonly from: number;
  readonly to: number;
}

/**
 * The round numbers of a stretch in the unit shown, at most so many and evenly spaced, as ranges; its end alone when it has
 * none.
 */
export function roundRanges({ from, to }: Stretch, units: DisplayUnits, most: number): readonly Metres[] {
  const ends = [fromSi(from, units.range), fromSi(to, units.range)] as const;
  const round = ends[1] > ends[0] ? niceTicks(...ends, most).values : [];
  return round.length === 0 ? [si(to)] : round.map((at) => si(toSi(at, units.range)));
}
