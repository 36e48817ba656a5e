import { optionalText, PAPER, rangeIn, stepIn, text } from '../asked/option.ts';
import { STANDING_OPTIONS } from '../asked/place-options.ts';
import { question as asked } from '../asked/question.ts';

export const question = asked({
  name: 'pins',
  purpose:
    'Sights with several pins: where each belongs, what it is on for, hits between pins, and how far each can be held dead on.',
  options: {
    set: optionalText(
      'ranges',
      'ranges that pins are set for, "20 yd, 30 yd, 40 yd", in place of sight.pins of the file; that example where it has none',
    ),
    ring: text('diameter', '8 in', 'ring that a shot with the pin held on its middle is to stay in'),
    every: stepIn(5, 'step of the ranges between pins'),
    beyond: rangeIn(20, 'how far beyond the lowest pin to go on'),
    to: rangeIn(100, 'farthest setting of a slider that carries several pins'),
    page: PAPER,
    ...STANDING_OPTIONS,
  },
  sheet: {
    when: 'asked',
    what: 'picture of the sight at true size, to hold against it: .pdf or .svg',
    example: 'pins',
  },
  examples: [
    ['gaps to set with a caliper, and hits between pins', 'setup.yaml'],
    ['what pins for these ranges would do', 'setup.yaml --set "20yd, 35yd, 50yd"'],
    ['with the heavy build, for a ring of 6 inches', 'setup.yaml --build heavy --ring 6in'],
    ['the pins at true size', 'setup.yaml --out pins.pdf'],
  ],
});
