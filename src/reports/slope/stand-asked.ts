import type { DisplayUnits } from '../../quantities/display-units.ts';
import { toSi } from '../../quantities/format.ts';
import type { Asked } from '../asked/option.ts';
import { limitedQuantity, optionRanges, positiveQuantity } from '../asked/quantity.ts';
import type { question } from './question.ts';
import type { StandAsked } from './stand.ts';

/** Higher stands, and farther shots from one, are slips of the pen. */
const HIGHEST = '100 ft';
/** Rows of a table from a stand, in the unit of ranges: first and step. */
const FIRST = 10;
const STEP = 5;

/** The stands and their ranges; null when no stand was asked about. @throws QuestionError */
export function standAsked(
  { stand, standTo, spotHeight }: Pick<Asked<typeof question.options>, 'stand' | 'standTo' | 'spotHeight'>,
  { range }: DisplayUnits,
): StandAsked | null {
  if (stand === null) return null;
  const [first, step] = [FIRST, STEP].map((count) => `${toSi(count, range)} m`);
  return {
    stands: stand.split(',').map((each) => positiveQuantity('stand', each.trim(), 'length', HIGHEST)),
    ranges: optionRanges({ from: String(first), to: standTo, every: String(step) }),
    spot: limitedQuantity('spotHeight', spotHeight, 'length', HIGHEST),
  };
}
