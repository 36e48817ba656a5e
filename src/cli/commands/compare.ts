import { Command, Option } from 'commander';
import type { Io } from '../io.ts';
import {
  csvOption,
  examples,
  jsonOption,
  rangeOption,
  uncalibratedOption,
  unitsOption,
  wholeNumber,
  withMetricRanges,
} from './shared-options.ts';

export const compareCommand = (io: Io): Command =>
  withMetricRanges(new Command('compare'))
    .description(
      'Several builds side by side: what really differs, by how much, and what cannot be told apart.',
    )
    .argument(
      '<setup...>',
      'setup files (YAML); the first is the build now tuned, its `builds:` come next, then the other files',
    )
    .addOption(rangeOption('--from <range>', 'nearest range; the shortest shot that asks for a mark', 20))
    .addOption(rangeOption('--to <range>', 'farthest range; few shots at game are longer', 80))
    .addOption(rangeOption('--every <step>', 'step of the rows', 20))
    .option('--ring <diameter>', 'what is to be hit, for how far a guess of the range may be off', '8 in')
    .option('--crosswind <speed>', 'wind from the side, to tell the drift by', '10 mph')
    .option(
      '--arrows <count>',
      'arrows of a sorted dozen shot with each build for its group; 0 leaves groups out',
      wholeNumber(0, 100_000),
      240,
    )
    .option('--out <file>', 'one page to take to the shop: .pdf or .svg')
    .addOption(new Option('--page <size>', 'paper').choices(['a4', 'letter']).default('a4'))
    .addOption(jsonOption())
    .addOption(csvOption())
    .addOption(unitsOption())
    .addOption(uncalibratedOption())
    .addHelpText(
      'after',
      examples([
        ['the builds listed in one file against its own', 'compare setup.yaml'],
        ['two files, as one page to print', 'compare now.yaml heavier.yaml --out compare.pdf'],
        ['for a 3-D course', 'compare setup.yaml --from "10 yd" --to "60 yd" --every "10 yd" --ring "10 in"'],
      ]),
    )
    .action(async (setups, options) =>
      (await import('../../reports/compare/run.ts')).runCompare(io, setups, options),
    );
