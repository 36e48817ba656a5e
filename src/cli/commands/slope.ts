import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const slopeCommand = (io: Io): Command =>
  setupCommand(
    'slope',
    'Uphill and downhill: the level mark to set by range and angle, what the cosine rule gets wrong, and a level not square to the shot.',
  )
    .addOption(rangeOption('--from <range>', 'nearest range along the line of sight', 20))
    .addOption(rangeOption('--to <range>', 'farthest range', 80))
    .addOption(rangeOption('--every <step>', 'step of the rows', 10))
    .option('--steepest <angle>', 'steepest slope, up and down', '40 deg')
    .option('--angle-step <angle>', 'step of the slopes', '10 deg')
    .option('--third-axis <angle>', 'how far the right end of the level points ahead of its left', '1 deg')
    .addHelpText(
      'after',
      examples([
        ['the cut table for the pocket', 'slope setup.yaml'],
        [
          'gentle slopes, further out',
          'slope setup.yaml --to "100 yd" --steepest "15 deg" --angle-step "5 deg"',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/slope/run.ts')).runSlope(io, setup, options),
    );
