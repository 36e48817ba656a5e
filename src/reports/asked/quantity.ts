import type { Dimension, SiUnit } from '../../quantities/dimension.ts';
import { parseQuantity } from '../../quantities/parse.ts';
import { type Metres, type MetresPerSecond, type Quantity, si } from '../../quantities/quantity.ts';
import { QuantityError } from '../../quantities/quantity-error.ts';
import type { Examples } from '../../quantities/suggestion.ts';
import { howMany } from './how-many.ts';
import { QuestionError } from './question-error.ts';

/** What a command line usually holds: ranges, not the sizes on a bow. */
const SHOWN_UNITS: Partial<Record<Dimension, Examples>> = { length: ['yd', 'm'], speed: ['fps', 'm/s'] };

/** What an option usually holds where its limit is written in one of these. */
const SHOWN_WITH: Readonly<Record<string, Examples>> = {
  in: ['in', 'cm'],
  ft: ['ft', 'm'],
  mph: ['mph', 'm/s'],
};
const shownWith = (limit: string): Examples | undefined => SHOWN_WITH[limit.replace(/^[\d.]+\s*/, '')];

/**
 * An option's quantity. @throws QuestionError naming the option
 *
 * @param shown units of what to write instead; those of ranges and of arrows by default
 */
export function optionQuantity<D extends Dimension>(
  option: string,
  text: string,
  dimension: D,
  shown: Examples | undefined = SHOWN_UNITS[dimension],
): Quantity<SiUnit[D]> {
  try {
    return parseQuantity(text, dimension, shown);
  } catch (error) {
    if (!(error instanceof QuantityError)) throw error;
    throw new QuestionError(`{${option}}: ${error.reason}`, `Write {${option}} ${error.suggestion}.`);
  }
}

/** An option's quantity, greater than zero and at most `most`. @throws QuestionError naming the option and its limits */
export function positiveQuantity<D extends Dimension>(
  option: string,
  text: string,
  dimension: D,
  most: string,
): Quantity<SiUnit[D]> {
  const value = limitedQuantity(option, text, dimension, most);
  if (value > 0) return value;
  throw new QuestionError(
    `{${option}}: ${text} must be greater than zero`,
    `Write a value greater than zero, at most ${most}.`,
  );
}

/** An option's quantity, not negative and at most `most`. @throws QuestionError naming the option and its limits */
export function limitedQuantity<D extends Dimension>(
  option: string,
  text: string,
  dimension: D,
  most: string,
): Quantity<SiUnit[D]> {
  const value = optionQuantity(option, text, dimension, shownWith(most));
  if (value < 0)
    throw new QuestionError(`{${option}}: ${text} must not be negative`, 'Write it without a minus sign.');
  if (value > optionQuantity(option, most, dimension))
    throw new QuestionError(`{${option}}: ${text} is too large to be right`, `It takes at most ${most}.`);
  return value;
}

/** An option's quantity, at most `most` either way. @throws QuestionError naming the option and its limit */
export function signedQuantity<D extends Dimension>(
  option: string,
  text: string,
  dimension: D,
  most: string,
): Quantity<SiUnit[D]> {
  const value = optionQuantity(option, text, dimension, shownWith(most));
  if (Math.abs(value) <= optionQuantity(option, most, dimension)) return value;
  throw new QuestionError(`{${option}}: ${text} is too large to be right`, `It takes at most ${most}.`);
}

/** Nobody shoots in a faster wind, so that more is a slip of the pen; our own judgement. */
const STRONGEST_WIND = '200 mph';

/** The speed of a wind whose direction is said apart. @throws QuestionError naming the option */
export function windSpeed(option: string, text: string): MetresPerSecond {
  const speed = optionQuantity(option, text, 'speed', shownWith(STRONGEST_WIND));
  if (speed > optionQuantity(option, STRONGEST_WIND, 'speed'))
    throw new QuestionError(
      `{${option}}: ${text} is too large to be right`,
      `It takes at most ${STRONGEST_WIND}.`,
    );
  if (speed >= 0) return speed;
  throw new QuestionError(
    `{${option}}: ${text} is negative, but a speed cannot be`,
    'Write it without a minus sign.',
  );
}

/** The speed of a wind from the side, either way. @throws QuestionError naming the option */
export const signedWind = (option: string, text: string): MetresPerSecond =>
  signedQuantity(option, text, 'speed', STRONGEST_WIND);

/** Far beyond any mark of a sight, so that a longer range is a slip of the pen; our own judgement. */
const FARTHEST = '3000 yd';

/** A range that an arrow may fly, m. @throws QuestionError naming the option */
export const flownRange = (option: string, text: string): Metres =>
  positiveQuantity(option, text, 'length', FARTHEST);

/** Rows beyond this are a slip of the pen: a step in the wrong unit. */
const MOST_ROWS = 2000;

export interface RangeOptions {
  readonly from?: string;
  readonly to: string;
  readonly every: string;
}

/**
 * The ranges from `from` (or one step, when it is left out) to `to`, m; multiples of the step are counted in whole steps so that
 * no rounding builds up.
 *
 * @param most rows that the question answers within seconds
 */
export function optionRanges({ from, to, every }: RangeOptions, most = MOST_ROWS): readonly Metres[] {
  const step = optionQuantity('every', every, 'length');
  const first = from === undefined ? step : optionQuantity('from', from, 'length');
  const last = optionQuantity('to', to, 'length');
  if (!(step > 0))
    throw new QuestionError(
      `{every}: the step must be greater than zero, and ${every} is not`,
      'Write {every} "1 yd" or another length greater than zero.',
    );
  if (!(first > 0))
    throw new QuestionError(
      `{from}: the range must be greater than zero, and ${from ?? every} is not`,
      'Write {from} "10 yd" or another length greater than zero.',
    );
  if (!(last >= first) && from === undefined)
    throw new QuestionError(
      `{every}: ${every} is longer than all of {to}, ${to}`,
      'Write a shorter {every} or a longer {to}.',
    );
  if (!(last >= first))
    throw new QuestionError(
      `{to}: ${to} is shorter than the range where the rows begin`,
      'Write a longer {to} or a shorter {from}.',
    );
  const count = Math.floor((last - first) / step + 1e-9) + 1;
  if (last > optionQuantity('to', FARTHEST, 'length'))
    throw new QuestionError(
      `{to}: ${to} is farther than any arrow flies`,
      `Write a {to} of at most ${FARTHEST}.`,
    );
  if (count > most)
    throw new QuestionError(
      `{every}: that would be ${howMany(count)} rows`,
      `Write a step that gives at most ${most}.`,
    );
  return Array.from({ length: count }, (_, i) => rounded(first + i * step));
}

/** To a tenth of a nanometre, so that 40 yd is 36.576 m and not 36.57600000000001 m. */
const rounded = (value: number): Metres => si(Number(value.toFixed(10)));
