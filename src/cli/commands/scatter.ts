import type { Command } from 'commander';
import { USUAL_DOZEN } from '../../reports/scatter/usual-dozen.ts';
import type { Io } from '../io.ts';
import { examples, rangeOption, setupCommand, wholeNumber } from './shared-options.ts';

export const scatterCommand = (io: Io): Command =>
  setupCommand(
    'scatter',
    'Group size by range from what a dozen arrows and their shots vary in, whose part is how much, and what a helical does for it.',
  )
    .addOption(rangeOption('--from <range>', 'nearest range', 20))
    .addOption(rangeOption('--to <range>', 'farthest range', 100))
    .addOption(rangeOption('--every <step>', 'step of the rows', 20))
    .option('--group <count>', 'arrows in a group: a dozen', wholeNumber(2, 1000), 12)
    .option(
      '--arrows <count>',
      'arrows shot for each cause and for all: group sizes then good to 2 %',
      wholeNumber(24, 100_000),
      1200,
    )
    .option(
      '--seed <number>',
      'of the random numbers; the same seed gives the same answer',
      wholeNumber(0, Number.MAX_SAFE_INTEGER),
      1,
    )
    .option('--mass <mass>', 'standard deviation of the arrows; a sorted dozen', USUAL_DOZEN.mass)
    .option('--balance <length>', 'of the balance point', USUAL_DOZEN.balance)
    .option('--speed <speed>', 'of the speed for one and the same arrow: bow and release', USUAL_DOZEN.speed)
    .option(
      '--bend <length>',
      'sag of the shaft in the middle, each way: half of what a dial on the turning shaft shows',
      USUAL_DOZEN.bend,
    )
    .option('--vane <angle>', 'error of one vane; set by hand with a jig', USUAL_DOZEN.vane)
    .option(
      '--head <angle>',
      'lean of the point, each way; 0.1 deg runs out 0.005 in on a 1.3 in point',
      USUAL_DOZEN.head,
    )
    .option(
      '--nock-travel <speed>',
      'speed of the nock across as the arrow leaves, each way',
      USUAL_DOZEN.nockTravel,
    )
    .option('--broadhead', 'with a common three-blade head of the same weight in place of the point')
    .addHelpText(
      'after',
      examples([
        ['a dozen sorted arrows from a steady bow', 'scatter setup.yaml'],
        ['the same arrows with broadheads', 'scatter setup.yaml --broadhead'],
        [
          'what straighter shafts would buy, groups of three',
          'scatter setup.yaml --bend "0.0005 in" --group 3',
        ],
      ]),
    )
    .action(async (setup, options) =>
      (await import('../../reports/scatter/run.ts')).runScatter(io, setup, options),
    );
