import { count, rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'broadhead',
  purpose:
    'Broadhead against field point of the same weight from the same bow: how far apart they hit, for a clean ' +
    'launch and for bad ones.',
  options: {
    blades: count('count', [2, 6], 3, 'blades of the broadhead when the file describes none; the commonest'),
    length: text('length', '1.1 in', 'of the blades along the arrow; a common head'),
    cuttingDiameter: text('length', '1.125 in', 'edge to edge; a common head'),
    thickness: text('length', '0.03 in', 'of a blade; a common head'),
    to: rangeIn(100, 'farthest range'),
    every: stepIn(10, 'step of the rows'),
    angle: text('angle', '1 deg', 'angle of the tail off its path in a bad launch'),
    nockTravel: text('speed', '1.5 fps', 'sideways speed of the nock in a bad launch'),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['a common three-blade head', 'setup.yaml'],
    [
      'two large blades, out of a well-tuned bow',
      'setup.yaml --blades 2 --cutting-diameter "1.5 in" --angle "0.2 deg" --nock-travel "0.3 fps"',
    ],
  ],
});
