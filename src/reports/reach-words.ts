import { rangeWords } from '../documents/table/range-digits.ts';
import type { DisplayUnits } from '../quantities/display-units.ts';
import type { Reach } from '../sight/reach.ts';

/** How far the arrow gets, for programs. */
export const reachData = ({ beyond }: Reach): object => ({ out_of_reach_m: beyond });

/** What there is less of where the arrow falls short. */
const LIST_STOPS = 'the list stops short of it';
export const LEFT_OUT = 'nothing is told of ranges from there on';

/**
 * Where the arrow falls short, and what there is the less for it; none when it gets to every range asked for.
 *
 * @param what of the list, after "not all"
 */
export function reachNotes(
  { beyond, isHit }: Reach,
  units: DisplayUnits,
  what = 'of this',
  less: typeof LIST_STOPS | typeof LEFT_OUT = LIST_STOPS,
): readonly string[] {
  if (beyond === null) return [];
  const range = rangeWords(beyond, units);
  return [
    isHit
      ? `${range} is so near the end of the arrow's reach that not all ${what} can be told there, so ${less}.`
      : `The arrow cannot reach ${range} with any sight setting, so ${less}.`,
  ];
}
