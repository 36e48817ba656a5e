import type { Command } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const marksCommand = (io: Io): Command =>
  setupCommand('marks', 'The sight mark of every range, how sure it is, and the path it gives.')
    .addOption(rangeOption('--from <range>', 'nearest range; closer ones matter on few bows', 10))
    .addOption(rangeOption('--to <range>', 'farthest range; few sights reach further', 100))
    .addOption(rangeOption('--every <step>', 'step of the rows; a tape has one tick each', 1))
    .addHelpText(
      'after',
      examples([
        ['every yard from 10 to 100', 'marks setup.yaml'],
        [
          'every 5 m from 20 m to 70 m, as a file for a spreadsheet',
          'marks setup.yaml --from "20 m" --to "70 m" --every "5 m" --units metric --csv > marks.csv',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/marks/run.ts')).runMarks(io, setup, options),
    );
