import type { Metres } from '../../quantities/quantity.ts';
import { optionQuantity } from './quantity.ts';
import { QuestionError } from './question-error.ts';

/** The diameter of a ring to hit, from its option. @throws QuestionError when it is not greater than zero */
export function ringSize(ring: string): Metres {
  const diameter = optionQuantity('ring', ring, 'length', ['in', 'cm']);
  if (diameter > 0) return diameter;
  throw new QuestionError(
    `{ring}: the ring must be greater than zero, and ${ring} is not`,
    'Write {ring} "8 in" or another size.',
  );
}
