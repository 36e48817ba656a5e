import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const windCommand = (io: Io): Command =>
  setupCommand(
    'wind',
    'Drift by wind from every hour of the clock, and whether the tape still holds in thinner, colder or hotter air.',
  )
    .option('--speed <speed>', 'speed of the wind; halve it and the drift halves', '10 mph')
    .addOption(rangeOption('--from <range>', 'nearest range', 20))
    .addOption(rangeOption('--to <range>', 'farthest range', 100))
    .addOption(rangeOption('--every <step>', 'step of the columns', 20))
    .addHelpText(
      'after',
      examples([
        ['a wind of 10 mph, 20 to 100 yards', 'wind setup.yaml'],
        [
          'a breeze of 3 m/s, in metres',
          'wind setup.yaml --speed "3 m/s" --from "20 m" --to "70 m" --every "10 m" --units metric',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/wind/run.ts')).runWind(io, setup, options),
    );
