import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const swingCommand = (io: Io): Command =>
  setupCommand(
    'swing',
    'How the arrow recovers from a bad start: margin, wavelength, damping, what the swing costs, and the hole it would leave in paper.',
  )
    .addOption(rangeOption('--to <range>', 'farthest range of the misses', 100))
    .addOption(rangeOption('--every <step>', 'step of the misses', 20))
    .option(
      '--angle <angle>',
      'by which the tail stands off as the arrow leaves; what the eye can just see',
      '1 deg',
    )
    .option(
      '--nock-travel <speed>',
      'speed of the nock across as the arrow leaves; a clear fault of tune',
      '1.5 fps',
    )
    .addHelpText(
      'after',
      examples([
        ['a degree of tail left or high, and 1.5 ft/s of nock travel', 'swing setup.yaml'],
        [
          'a slower nock, every 10 yards to 60',
          'swing setup.yaml --nock-travel "0.5 fps" --to "60 yd" --every "10 yd"',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/swing/run.ts')).runSwing(io, setup, options),
    );
