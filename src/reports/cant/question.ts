import { rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'cant',
  purpose:
    'What a leaning bow costs, what the arrow drifts by its spin, and whether one lean of bow or sight is worth setting.',
  options: {
    from: rangeIn(20, 'nearest range of the rows and of the lean'),
    to: rangeIn(100, 'farthest range of the rows and of the lean'),
    every: stepIn(10, 'step of the rows'),
    most: text('angle', '5 deg', 'largest cant of the table, either way'),
    step: text('angle', '1 deg', 'step of the cants'),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['the verdict, the drift and the costs from 20 to 100 yards', 'setup.yaml'],
    ['the lean for a course that ends at 60 yards', 'setup.yaml --to "60 yd"'],
  ],
});
