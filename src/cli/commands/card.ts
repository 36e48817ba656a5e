import { type Command, Option } from 'commander';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand } from './shared-options.ts';

export const cardCommand = (io: Io): Command =>
  setupCommand(
    'card',
    'One page to take along: marks and how sure they are, time, speed, energy, wind, cant, slopes and the paths.',
  )
    .requiredOption('--out <file>', 'file to write; .pdf or .svg')
    .addOption(new Option('--page <size>', 'paper').choices(['a4', 'letter']).default('a4'))
    .addOption(rangeOption('--from <range>', 'first range of the rows; most sights are zeroed there', 20))
    .addOption(rangeOption('--to <range>', 'last range of the rows; few sights reach further', 100))
    .addOption(rangeOption('--every <step>', 'step of the rows; one page holds about twenty-five', 5))
    .option('--crosswind <speed>', 'wind from the side, for the drift', '10 mph')
    .option('--steepest <angle>', 'steepest slope of the cut table, up and down', '40 deg')
    .option('--angle-step <angle>', 'step of the slopes', '10 deg')
    .addHelpText(
      'after',
      examples([
        ['on A4, every 5 yards to 100', 'card setup.yaml --out card.pdf'],
        [
          'in metres on Letter paper, for a course in the hills',
          'card setup.yaml --units metric --from "10 m" --to "60 m" --every "5 m" --crosswind "4 m/s" --page letter --out card.pdf',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/card/run.ts')).runCard(io, setup, options),
    );
