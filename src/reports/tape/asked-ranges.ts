import { fromSi, toSi } from '../../quantities/format.ts';
import type { TapeRange } from '../../sight/tape.ts';
import { optionQuantity } from '../asked/quantity.ts';
import { QuestionError } from '../asked/question-error.ts';

/** A range this little off a whole one, in the tape's unit, is meant to be whole: what rounding leaves of "18.288 m" in yards. */
const ROUNDING = 1e-9;

/** A number on a tape has at most three digits. */
const LARGEST_NUMBER = 999;

/**
 * The whole yards or metres from the first range to the last.
 *
 * @throws QuestionError when fewer than two lie between them, or a number would be too long for a tape
 */
export function askedRanges(
  { from, to }: { readonly from: string; readonly to: string },
  unit: 'yd' | 'm',
): readonly TapeRange[] {
  const first = Math.ceil(fromSi(optionQuantity('from', from, 'length'), unit) - ROUNDING);
  const last = Math.floor(fromSi(optionQuantity('to', to, 'length'), unit) + ROUNDING);
  if (!(first > 0 && last > first))
    throw new QuestionError(
      `{from} ${from} {to} ${to} leaves no tape`,
      'Write {from} "20 yd" {to} "100 yd", the shorter first.',
    );
  if (last > LARGEST_NUMBER)
    throw new QuestionError(
      `{to}: ${to} is too far for a tape`,
      `Write a {to} of at most ${LARGEST_NUMBER} ${unit}.`,
    );
  return Array.from({ length: last - first + 1 }, (_, i) => ({
    range: toSi(first + i, unit),
    label: first + i,
  }));
}
