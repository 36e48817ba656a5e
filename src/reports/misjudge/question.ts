import { rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'misjudge',
  purpose:
    'How far off a guess of the range may be for a ring, and the chance of a hit with guess, cant, wind and your ' +
    'own group together.',
  options: {
    ring: text('diameter', '8 in', 'ring to hit, by the centre of the arrow'),
    from: rangeIn(20, 'nearest range'),
    to: rangeIn(60, 'farthest range'),
    every: stepIn(5, 'step of the rows'),
    guess: text(
      'share',
      '6 %',
      'usual error of a guessed range, one standard deviation; 0 % for a rangefinder',
    ),
    cant: text('angle', '1 deg', 'usual cant that goes unnoticed, one standard deviation'),
    gusts: text(
      'speed',
      '2 mph',
      'usual wind that goes unnoticed, along and across alike, one standard deviation',
      'windSpeed',
    ),
    ...STANDING_OPTIONS,
  },
  examples: [
    ['an 8 inch ring, 20 to 60 yards', 'setup.yaml --ring 8in'],
    ['with a rangefinder', 'setup.yaml --ring 8in --guess "0 %" --to "100 yd"'],
  ],
});
