import { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, jsonOption, uncalibratedOption, unitsOption } from './shared-options.ts';

export const checkCommand = (io: Io): Command =>
  new Command('check')
    .description(
      'Read a setup file, name every problem in it with its line, and show what the tool makes of it.',
    )
    .argument('<setup>', 'setup file (YAML); - reads standard input')
    .addOption(jsonOption())
    .addOption(unitsOption())
    .addOption(uncalibratedOption())
    .addHelpText(
      'after',
      examples([
        ['every problem at once, with line and column', 'check setup.yaml'],
        ['the arrow part by part, its drag term by term', 'check examples/mountain-hunt/setup.yaml'],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/check/run.ts')).runCheck(io, setup, options),
    );
