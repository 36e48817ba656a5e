import { rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'wind',
  purpose:
    'Drift by wind from every hour of the clock, and whether the tape still holds in thinner, colder or hotter air.',
  options: {
    speed: text('speed', '10 mph', 'speed of the wind; halve it and the drift halves', 'windSpeed'),
    from: rangeIn(20, 'nearest range'),
    to: rangeIn(100, 'farthest range'),
    every: stepIn(20, 'step of the columns'),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['a wind of 10 mph, 20 to 100 yards', 'setup.yaml'],
    [
      'a breeze of 3 m/s, in metres',
      'setup.yaml --speed "3 m/s" --from "20 m" --to "70 m" --every "10 m" --units metric',
    ],
  ],
});
