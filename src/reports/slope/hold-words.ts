import type { SlopeMark } from '../../advice/range/slope.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity } from '../../quantities/format.ts';
import { heightWords, roughDigits } from '../side-words.ts';

/** A hit this far off is not worth holding off for, m: half an inch. @source common practice, no source */
const NOT_WORTH_HOLDING = 0.0127;

/** How to hold where even the highest mark hits high: "hold dead on, 0.4 in high", or "hold 1.2 in low". */
export const holdWords = (hold: number, units: DisplayUnits): string =>
  hold < NOT_WORTH_HOLDING
    ? `hold dead on, ${heightWords(hold, units, roughDigits(units))}`
    : `hold ${heightWords(-hold, units, roughDigits(units))}`;

/** What to do at each range and slope without a mark, a line a range; empty when every shot has one. */
export function holdLines(marks: readonly SlopeMark[], units: DisplayUnits): string {
  const without = marks.filter(({ markRange }) => markRange === null);
  const ranges = [...new Set(without.map(({ range }) => range))];
  return ranges
    .map((range) => {
      const shots = without
        .filter((mark) => mark.range === range)
        .map(({ slope, hold }) => `at ${signedDegrees(slope)} ${holdWords(hold, units)}`);
      return `"-" at ${rangeWords(range, units)}: set the highest; ${shots.join('; ')}.`;
    })
    .join('\n');
}

const signedDegrees = (slope: number): string => `${slope > 0 ? '+' : ''}${formatQuantity(slope, 'deg', 0)}`;
