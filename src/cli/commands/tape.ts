import { type Command, Option } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand, wholeNumber, withMetricRanges } from './shared-options.ts';

export const tapeCommand = (io: Io): Command =>
  withMetricRanges(
    setupCommand('tape', 'Draw the sight tape at true scale, to print at 100 % and cut out.'),
    (asked) => asked.getOptionValue('in') === 'metres',
  )
    .requiredOption('--out <file>', 'file to write; .pdf or .svg')
    .addOption(new Option('--page <size>', 'paper').choices(['a4', 'letter']).default('a4'))
    .addOption(
      new Option('--in <unit>', 'what the tape counts').choices(['yards', 'metres']).default('yards'),
    )
    .addOption(rangeOption('--from <range>', 'first range on the tape; below it marks turn back', 20))
    .addOption(
      rangeOption(
        '--to <range>',
        'last range on the tape; it ends earlier where the arrow would touch the sight',
        100,
      ),
    )
    .option(
      '--copies <count>',
      'copies of the main tape on the page; cutting and gluing spoil some',
      wholeNumber(1, 60),
      3,
    )
    .option(
      '--neighbours <count>',
      'tapes for lower and higher speeds, each side; 0 leaves them out',
      wholeNumber(0, 6),
      2,
    )
    .option(
      '--step <speed>',
      'speed from one neighbour to the next; about what a chronograph is off by',
      '2 fps',
    )
    .addHelpText(
      'after',
      examples([
        ['on A4, 20 to 100 yards', 'tape setup.yaml --out tape.pdf'],
        [
          'in metres on Letter paper, as a drawing',
          'tape setup.yaml --in metres --from "18 m" --to "70 m" --page letter --out tape.svg',
        ],
      ]),
    )
    .action(async (setup, options) => {
      (await import('../../reports/asked/quantity.ts')).positiveQuantity(
        '--step',
        options.step,
        'speed',
        '20 fps',
      );
      await (await import('../../reports/tape/run.ts')).runTape(io, setup, options);
    });
