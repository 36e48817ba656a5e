import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand, wholeNumber } from './shared-options.ts';

export const broadheadCommand = (io: Io): Command =>
  setupCommand(
    'broadhead',
    'Broadhead against field point of the same weight from the same bow: how far apart they hit, for a clean launch and for bad ones.',
  )
    .option(
      '--blades <count>',
      'blades of the broadhead when the file describes none; the commonest',
      wholeNumber(2, 6),
      3,
    )
    .option('--length <length>', 'of the blades along the arrow; a common head', '1.1 in')
    .option('--cutting-diameter <length>', 'edge to edge; a common head', '1.125 in')
    .option('--thickness <length>', 'of a blade; a common head', '0.03 in')
    .addOption(rangeOption('--to <range>', 'farthest range', 100))
    .addOption(rangeOption('--every <step>', 'step of the rows', 10))
    .option('--angle <angle>', 'by which the tail stands off in a bad launch', '1 deg')
    .option('--nock-travel <speed>', 'speed of the nock across in a bad launch', '1.5 fps')
    .addHelpText(
      'after',
      examples([
        ['a common three-blade head', 'broadhead setup.yaml'],
        [
          'two large blades, out of a well-tuned bow',
          'broadhead setup.yaml --blades 2 --cutting-diameter "1.5 in" --angle "0.2 deg" --nock-travel "0.3 fps"',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/broadhead/run.ts')).runBroadhead(io, setup, options),
    );
