import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const flyCommand = (io: Io): Command =>
  setupCommand(
    'fly',
    'Fly one arrow: time, speed, drop, height over the line of sight, drift, spin, energy and momentum by range.',
  )
    .addOption(rangeOption('--to <range>', 'farthest range; marks rarely go beyond it', 100))
    .addOption(rangeOption('--every <step>', 'step of the rows; it fits a screen', 5))
    .option('--aim <range>', 'range the sight is set for; the zero range of the setup when left out')
    .addHelpText(
      'after',
      examples([
        ['every 5 yards to 100', 'fly setup.yaml'],
        [
          'in metres, sighted in for 50 m',
          'fly setup.yaml --to "90 m" --every "10 m" --aim "50 m" --units metric',
        ],
      ]),
    )
    .action(async (setup, options) => (await import('../../reports/fly/run.ts')).runFly(io, setup, options));
