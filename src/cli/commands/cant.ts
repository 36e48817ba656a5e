import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const cantCommand = (io: Io): Command =>
  setupCommand(
    'cant',
    'What a leaning bow costs, what the arrow drifts by its spin, and whether one lean of bow or sight is worth setting.',
  )
    .addOption(rangeOption('--from <range>', 'nearest range of the rows and of the lean', 20))
    .addOption(rangeOption('--to <range>', 'farthest range of the rows and of the lean', 100))
    .addOption(rangeOption('--every <step>', 'step of the rows', 10))
    .option('--most <angle>', 'largest cant of the table, either way', '5 deg')
    .option('--step <angle>', 'step of the cants', '1 deg')
    .addHelpText(
      'after',
      examples([
        ['the verdict, the drift and the costs from 20 to 100 yards', 'cant setup.yaml'],
        ['the lean for a course that ends at 60 yards', 'cant setup.yaml --to "60 yd"'],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/cant/run.ts')).runCant(io, setup, options),
    );
