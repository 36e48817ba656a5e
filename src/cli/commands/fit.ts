import { type Command, Option } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const fitCommand = (io: Io): Command =>
  setupCommand(
    'fit',
    'Hold the model to the marks that were shot: what they decide, what they do not, and where to shoot next.',
  )
    .addOption(
      rangeOption('--from <range>', 'nearest range the tape is to serve; most sights are zeroed there', 20),
    )
    .addOption(
      rangeOption('--to <range>', 'farthest range the tape is to serve; name the one you shoot', 100),
    )
    .option('--out <file>', 'the same as one page to keep or to show: .pdf or .svg')
    .addOption(new Option('--page <size>', 'paper').choices(['a4', 'letter']).default('a4'))
    .addHelpText(
      'after',
      examples([
        ['values, errors, residuals and the next range', 'fit setup.yaml'],
        ['the same as one page', 'fit setup.yaml --out report.pdf'],
        ['for a 3-D course that ends at 60 yards', 'fit setup.yaml --to "60 yd"'],
      ]),
    )
    .action(async (setup, options) => (await import('../../reports/fit/run.ts')).runFit(io, setup, options));
