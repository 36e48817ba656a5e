import { rangeIn, stepIn } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';
import { SIGHT_OPTIONS } from '../asked/sight-options.ts';

export const question = asked({
  name: 'marks',
  purpose: 'The sight mark of every range, how sure it is, and the path it gives.',
  options: {
    from: rangeIn(10, 'nearest range; closer ones matter on few bows'),
    to: rangeIn(100, 'farthest range; few sights reach further'),
    every: stepIn(1, 'step of the rows; a tape has one tick each'),
    ...SIGHT_OPTIONS,
    ...STANDING_OPTIONS,
  },
  examples: [
    ['every yard from 10 to 100', 'setup.yaml'],
    [
      'every 5 m from 20 m to 70 m, as a file for a spreadsheet',
      'setup.yaml --from "20 m" --to "70 m" --every "5 m" --units metric --csv > marks.csv',
    ],
  ],
});
