import { optionalText, rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'swing',
  purpose:
    'How the arrow recovers from a bad launch: margin, wavelength, damping, what the swing costs, and the hole it ' +
    'would leave in paper.',
  options: {
    to: rangeIn(100, 'farthest range of the misses'),
    every: stepIn(20, 'step of the misses'),
    angle: text(
      'angle',
      '1 deg',
      'angle of the tail off its path as the arrow leaves; what the eye can just see',
    ),
    nockTravel: text(
      'speed',
      '1.5 fps',
      'sideways speed of the nock as the arrow leaves; a clear fault of tune',
    ),
    tear: optionalText(
      'tear',
      'a tear in paper instead, "0.75 in left": the launches are then what it may mean, all angle or all nock travel',
    ),
    paper: text('distance', '6 ft', 'how far ahead of the grip the paper of that tear hung'),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['a degree of tail left or high, and 1.5 ft/s of nock travel', 'setup.yaml'],
    [
      'a slower nock, every 10 yards to 60',
      'setup.yaml --nock-travel "0.5 fps" --to "60 yd" --every "10 yd"',
    ],
    ['what a tear means', 'setup.yaml --tear "0.75 in left" --paper 6ft'],
  ],
});
