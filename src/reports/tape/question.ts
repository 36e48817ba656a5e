import { choice, count, flag, optionalText, PAPER, rangeIn, text, textFile } from '../asked/option.ts';
import { STANDINGS_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';
import { SIGHT_OPTIONS } from '../asked/sight-options.ts';

export const question = asked({
  name: 'tape',
  purpose: 'Draw the sight tape at true scale, to print at 100 % and cut out.',
  options: {
    page: PAPER,
    in: choice('unit', ['yards', 'metres'], 'yards', 'unit of the numbers on the tape'),
    from: rangeIn(20, 'first range on the tape; below it marks turn back'),
    to: rangeIn(100, 'last range on the tape; it ends earlier where the arrow would touch the sight'),
    copies: count(
      'count',
      [0, 60],
      0,
      'copies of each main tape, as cutting and gluing spoil some; 0 fills the page',
    ),
    neighbours: count('count', [0, 6], 2, 'tapes for lower and higher speeds, each side; 0 leaves them out'),
    join: flag('let a tape longer than the page run on to a second strip, glued on where a line shows'),
    step: text('speed', '2 fps', 'step of speed from one tape to the next; about the error of a chronograph'),
    ...SIGHT_OPTIONS,

    against: textFile(
      'file',
      'old tape to judge, as rows that --csv of this command writes: which of its numbers to use, and how far it is off',
    ),
    againstSpeed: optionalText(
      'speed',
      'speed that the tape on the sight was made for, in place of its rows',
    ),
    ...STANDINGS_OPTIONS,
    anyway: flag('print although the marks contradict one another; every strip then says DRAFT'),
  },
  sheet: { when: 'asked', what: 'file to write; .pdf or .svg', example: 'tape' },
  // A tape in metres asks for round numbers of metres, whatever the units of the words.
  countsMetres: (given, system) => system !== 'imperial' || given['in'] === 'metres',
  examples: [
    ['what a tape for 282 ft/s is still worth', 'setup.yaml --against-speed 282fps'],
    ['for every place of the file, side by side', 'setup.yaml --place all --out tapes.pdf'],
    ['on A4, 20 to 100 yards', 'setup.yaml --out tape.pdf'],
    [
      'in metres on Letter paper, as a drawing',
      'setup.yaml --in metres --from "18 m" --to "70 m" --page letter --out tape.svg',
    ],
  ],
});
