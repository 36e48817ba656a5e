import { count, flag, rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';
import { USUAL_DOZEN } from './usual-dozen.ts';

export const question = asked({
  name: 'scatter',
  purpose:
    'Group size by range from the differences within a dozen arrows and between shots, how much each ' +
    'contributes, and what a helical changes.',
  options: {
    from: rangeIn(20, 'nearest range'),
    to: rangeIn(100, 'farthest range'),
    every: stepIn(20, 'step of the rows'),
    group: count('count', [2, 1000], 12, 'arrows in a group: a dozen'),
    arrows: count(
      'count',
      [24, 100_000],
      1200,
      'arrows shot for each cause and for all: group sizes then good to 2 %',
    ),
    seed: count(
      'number',
      [0, Number.MAX_SAFE_INTEGER],
      1,
      'of the random numbers; the same seed gives the same answer',
    ),
    mass: text('mass', USUAL_DOZEN.mass, 'standard deviation of the arrows; a sorted dozen'),
    balance: text('length', USUAL_DOZEN.balance, 'of the balance point'),
    speed: text('speed', USUAL_DOZEN.speed, 'of the speed for one and the same arrow: bow and release'),
    bend: text(
      'length',
      USUAL_DOZEN.bend,
      'sag of the shaft in the middle, each way: half of what a dial on the turning shaft shows',
    ),
    vane: text('angle', USUAL_DOZEN.vane, 'error of one vane; set by hand with a jig'),
    head: text(
      'angle',
      USUAL_DOZEN.head,
      'lean of the point, each way; 0.1 deg runs out 0.005 in on a 1.3 in point',
    ),
    nockTravel: text(
      'speed',
      USUAL_DOZEN.nockTravel,
      'sideways speed of the nock as the arrow leaves, each way',
    ),
    broadhead: flag('with a common three-blade head of the same weight in place of the point'),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['a dozen sorted arrows from a steady bow', 'setup.yaml'],
    ['the same arrows with broadheads', 'setup.yaml --broadhead'],
    ['what straighter shafts would gain, groups of three', 'setup.yaml --bend "0.0005 in" --group 3'],
  ],
});
