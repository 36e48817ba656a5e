import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, setupCommand } from './shared-options.ts';

export const fitCommand = (io: Io): Command =>
  setupCommand(
    'fit',
    'Hold the model to the marks that were shot: what they decide, what they do not, and where to shoot next.',
  )
    .option('--from <range>', 'nearest range the tape is to serve; most sights are zeroed there', '20 yd')
    .option('--to <range>', 'farthest range the tape is to serve; name the one you shoot', '100 yd')
    .addHelpText(
      'after',
      examples([
        ['values, errors, residuals and the next range', 'fit setup.yaml'],
        ['for a 3-D course that ends at 60 yards', 'fit setup.yaml --to "60 yd"'],
      ]),
    )
    .action(async (setup, options) => (await import('../runs/fit.ts')).runFit(io, setup, options));
