import { Command } from 'commander';
import type { Io } from '../io.ts';
import type { FileCommand } from './file-command.ts';
import { examples, unitsOption } from './shared-options.ts';

const EXAMPLES = [
  [
    'a group of six, 5 inches wide, at 60 yards with the scale at 31.9',
    'add setup.yaml "60 yd 31.9 6 arrows 5 in"',
  ],
  ['where its middle hit', 'add setup.yaml "60 yd 31.9 6 arrows 5 in 1 in left 2 in low"'],
  ["today's speed at the bow", 'add setup.yaml 279 fps'],
  ['a group of a day of its own', 'add setup.yaml "40 yd 18.4 3 arrows" --day 2026-08-15'],
] as const;

const make = (io: Io): Command =>
  new Command('add')
    .description(
      'Add a mark or a speed to a setup file in your own words. The first length is the range, the second the group; a number ' +
        'without a unit is what the scale read. Everything else in the file stays as it is, comments too.',
    )
    .argument('<setup>', 'setup file (YAML)')
    .argument(
      '<words...>',
      'what was shot: range, reading, arrows, group, left or right, high or low, date, note',
    )
    .option(
      '--day <name>',
      'the day that it belongs to, by its name under days; one that is not there yet is begun',
    )
    .addOption(unitsOption())
    .addHelpText('after', examples(EXAMPLES))
    .action(async (file, words: readonly string[], options) =>
      (await import('../runs/add.ts')).runAdd(io, file, words.join(' '), options),
    );

export const addCommand: FileCommand = { make, examples: EXAMPLES };
