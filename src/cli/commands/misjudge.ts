import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const misjudgeCommand = (io: Io): Command =>
  setupCommand(
    'misjudge',
    'How far off a guess of the range may be for a ring, and the chance of a hit with guess, cant, wind and your own group together.',
  )
    .option('--ring <diameter>', 'ring to hit, by the centre of the arrow', '8 in')
    .addOption(rangeOption('--from <range>', 'nearest range', 20))
    .addOption(rangeOption('--to <range>', 'farthest range', 60))
    .addOption(rangeOption('--every <step>', 'step of the rows', 5))
    .option(
      '--guess <share>',
      'usual error of a guessed range, one standard deviation; 0 % for a rangefinder',
      '6 %',
    )
    .option('--cant <angle>', 'usual cant that goes unnoticed, one standard deviation', '1 deg')
    .option(
      '--gusts <speed>',
      'usual wind that goes unnoticed, along and across alike, one standard deviation',
      '2 mph',
    )
    .addHelpText(
      'after',
      examples([
        ['an 8 inch ring, 20 to 60 yards', 'misjudge setup.yaml --ring 8in'],
        ['with a rangefinder', 'misjudge setup.yaml --ring 8in --guess "0 %" --to "100 yd"'],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/misjudge/run.ts')).runMisjudge(io, setup, options),
    );
