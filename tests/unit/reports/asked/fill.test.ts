import { describe, expect, it } from 'vitest';
import type { UnitSystem } from '../../../../src/quantities/display-units.ts';
import { filled } from '../../../../src/reports/asked/fill.ts';
import { choice, optionalText, rangeIn, stepIn, text } from '../../../../src/reports/asked/option.ts';
import { question } from '../../../../src/reports/asked/question.ts';
import { QuestionError } from '../../../../src/reports/asked/question-error.ts';

const asked = question({
  name: 'try',
  purpose: 'Try the options.',
  examples: [],
  options: {
    to: rangeIn(100, 'farthest range'),
    every: stepIn(5, 'step'),
    at: { ...rangeIn(60, 'ranges'), of: 'ranges' },
    aim: optionalText('range', 'range set'),
    ring: text('diameter', '8 in', 'ring'),
    wind: text('speed', '10 mph', 'wind', 'windSpeed'),
    nock: text('speed', '1.5 fps', 'of the nock'),
    angle: text('angle', '1 deg', 'angle'),
    altitude: optionalText('altitude', 'of the place'),
    guess: text('share', '6 %', 'error of a guess'),
    show: text('names', 'drop', 'what to show'),
    in: choice('unit', ['yards', 'metres'], 'yards', 'unit of the tape'),
  },
});

/** The option, what is typed, and what it is with either system of units. */
describe.each([
  ['to', '60', '60 yd', '60 m'],
  ['to', '60 m', '60 m', '60 m'],
  ['to', '60Y', '60Y', '60Y'],
  ['every', '2.5', '2.5 yd', '2.5 m'],
  ['at', '40,60', '40 yd,60 yd', '40 m,60 m'],
  ['at', '40 yd, 60', '40 yd,60 yd', '40 yd,60 m'],
  ['aim', '60', '60 yd', '60 m'],
  ['ring', '8', '8 in', '8 mm'],
  ['ring', '7 1/2', '7.5 in', '7.5 mm'],
  ['wind', '15', '15 mph', '15 m/s'],
  ['nock', '2', '2 fps', '2 m/s'],
  ['angle', '0', '0 deg', '0 deg'],
  ['altitude', '9800', '9800 ft', '9800 m'],
  ['altitude', '1,250', '1,250', '1,250'],
  ['guess', '10', '10 %', '10 %'],
  ['guess', '0.1', '0.1', '0.1'],
  ['show', '3', '3', '3'],
  ['in', 'yd', 'yards', 'yards'],
  ['in', 'Meters', 'metres', 'metres'],
  ['in', 'M', 'metres', 'metres'],
] as const)('--%s %s', (name, typed, imperial, metric) => {
  it.each([
    ['imperial', imperial],
    ['metric', metric],
  ] as const)('%s is %s', (system: UnitSystem, value) =>
    expect(filled(asked, { [name]: typed }, system)[name]).toBe(value),
  );
});

it('a word that is no choice is refused with the choices', () =>
  expect(() => filled(asked, { in: 'feet' }, 'imperial')).toThrow(QuestionError));
