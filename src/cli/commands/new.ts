import { Command } from 'commander';
import type { Io } from '../io.ts';
import type { FileCommand } from './file-command.ts';
import { examples, unitsOption } from './shared-options.ts';

const EXAMPLES = [
  ['write setup.yaml here', 'new'],
  ['one file for each bow and arrow', 'new hunting-bow.yaml'],
] as const;

const make = (io: Io): Command =>
  new Command('new')
    .description(
      'Write a commented setup file to start from. At a terminal it asks for the five numbers that marks need; elsewhere every ' +
        'value in the file is an example: put yours in their place.',
    )
    .argument('[file]', 'file to write', 'setup.yaml')
    .option('--force', 'replace a file that already exists')
    .option('--metric', 'written in metric units, as with --units metric')
    .option(
      '--template',
      'write the commented example at once; at a terminal, new asks for your numbers otherwise',
    )
    .addOption(unitsOption())
    .addHelpText('after', examples(EXAMPLES))
    .action(async (file, options) => (await import('../runs/new.ts')).runNew(io, file, options));

export const newCommand: FileCommand = { make, examples: EXAMPLES };
