import { optionalText, rangeIn, stepIn } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'fly',
  purpose:
    'Fly one arrow: time, speed, drop, height over the line of sight, drift, spin, energy and momentum by range.',
  options: {
    to: rangeIn(100, 'farthest range; marks rarely go beyond it'),
    every: stepIn(5, 'step of the rows; it fits a screen'),
    aim: optionalText('range', 'range the sight is set for; the zero range of the setup when left out'),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['every 5 yards to 100', 'setup.yaml'],
    ['in metres, sighted in for 50 m', 'setup.yaml --to "90 m" --every "10 m" --aim "50 m" --units metric'],
  ],
});
