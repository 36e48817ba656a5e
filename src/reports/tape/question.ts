import { choice, count, flag, PAPER, rangeIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'tape',
  purpose: 'Draw the sight tape at true scale, to print at 100 % and cut out.',
  options: {
    page: PAPER,
    in: choice('unit', ['yards', 'metres'], 'yards', 'unit of the numbers on the tape'),
    from: rangeIn(20, 'first range on the tape; below it marks turn back'),
    to: rangeIn(100, 'last range on the tape; it ends earlier where the arrow would touch the sight'),
    copies: count('count', [1, 60], 3, 'copies of the main tape on the page; cutting and gluing spoil some'),
    neighbours: count('count', [0, 6], 2, 'tapes for lower and higher speeds, each side; 0 leaves them out'),
    step: text('speed', '2 fps', 'step of speed from one tape to the next; about the error of a chronograph'),
    ...STANDING_OPTIONS,
    anyway: flag('print although the marks contradict one another; every strip then says DRAFT'),
  },
  sheet: { when: 'always', what: 'file to write; .pdf or .svg', example: 'tape' },
  // A tape in metres asks for round numbers of metres, whatever the units of the words.
  countsMetres: (given, system) => system === 'metric' || given['in'] === 'metres',
  examples: [
    ['on A4, 20 to 100 yards', 'setup.yaml --out tape.pdf'],
    [
      'in metres on Letter paper, as a drawing',
      'setup.yaml --in metres --from "18 m" --to "70 m" --page letter --out tape.svg',
    ],
  ],
});
