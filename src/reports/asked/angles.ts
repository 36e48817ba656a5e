import { howMany } from './how-many.ts';
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
  if (!(most > 0))
    throw new QuestionError(
      `{${largest.option}}: the largest angle must be greater than zero, and ${largest.text} is not`,
      `Write {${largest.option}} "10 deg" or another angle.`,
    );
  if (!(one > 0))
    throw new QuestionError(
      `{${step.option}}: the step must be greater than zero, and ${step.text} is not`,
      `Write {${step.option}} "1 deg" or another angle.`,
    );
  const count = Math.floor(most / one + 1e-9);
  if (count < 1)
    throw new QuestionError(
      `{${step.option}}: a step of ${step.text} is larger than {${largest.option}}, ${largest.text}`,
      `Write a smaller {${step.option}} or a larger {${largest.option}}.`,
    );
  if (2 * count >= MOST_ANGLES)
    throw new QuestionError(
      `{${step.option}}: that would be ${howMany(2 * count + 1)} angles`,
      `Write a step that gives fewer than ${MOST_ANGLES}.`,
    );
  return Array.from({ length: 2 * count + 1 }, (_, i) => (i - count) * one);
}
