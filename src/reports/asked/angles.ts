import { optionQuantity, signedQuantity } from './quantity.ts';
import { QuestionError } from './question-error.ts';

/** Angles beyond this many are a slip of the pen. */
const MOST_ANGLES = 200;

/** Steeper slopes and bows that lean more are not shot. */
const STEEPEST = '75 deg';

/** An option and what was written for it. */
export interface Written {
  readonly option: string;
  readonly text: string;
}

/** Every angle from the largest one way, by whole steps, to the largest the other, 0 among them; rad. */
export function anglesBothWays(largest: Written, step: Written): readonly number[] {
  const most = signedQuantity(largest.option, largest.text, 'angle', STEEPEST);
  const one = optionQuantity(step.option, step.text, 'angle');
  const count = Math.floor(most / one + 1e-9);
  if (!(one > 0 && count >= 1 && 2 * count < MOST_ANGLES))
    throw new QuestionError(
      `{${step.option}}: ${step.text} does not divide ${largest.text} evenly`,
      `Write a step greater than zero and no larger than {${largest.option}}.`,
    );
  return Array.from({ length: 2 * count + 1 }, (_, i) => (i - count) * one);
}
