import { flag, PAPER, rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'card',
  purpose:
    'One page to take along: marks and how sure they are, time, speed, energy, wind, cant, slopes and the paths.',
  options: {
    page: PAPER,
    pocket: flag(
      'cards for a pocket instead, 85.6 mm x 54 mm: what to set on one side, wind and slopes on the other',
    ),
    from: rangeIn(20, 'first range of the rows; most sights are zeroed there'),
    to: rangeIn(100, 'last range of the rows; few sights reach further'),
    every: stepIn(5, 'step of the rows; one page holds about twenty-five'),
    crosswind: text('speed', '10 mph', 'wind from the side, for the drift', 'windSpeed'),
    steepest: text('angle', '40 deg', 'steepest slope of the cut table, up and down'),
    angleStep: text('angle', '10 deg', 'step of the slopes'),
    ...STANDING_OPTIONS,
    anyway: flag('print although the marks contradict one another; every page then says DRAFT'),
  },
  sheet: { when: 'always', what: 'file to write; .pdf or .svg', example: 'card' },
  examples: [
    ['on A4, every 5 yards to 100', 'setup.yaml --out card.pdf'],
    ['cards for a pocket, to cut out and fold', 'setup.yaml --pocket --out pocket.pdf'],
    [
      'in metres on Letter paper, for a course in the hills',
      'setup.yaml --units metric --from "10 m" --to "60 m" --every "5 m" --crosswind "4 m/s" --page letter --out card.pdf',
    ],
  ],
});
