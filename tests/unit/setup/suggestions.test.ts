import { describe, expect, it } from 'vitest';
import { parseQuantity } from '../../../src/quantities/parse.ts';
import { LIMITS, type LimitKey } from '../../../src/setup/schema/limits.ts';
import { readQuantity } from '../../../src/setup/schema/quantity-leaf.ts';
import { EXAMPLE, SMALLEST } from './example-text.ts';
import { problemsOf } from './problems-of.ts';

const insteadOf = (key: LimitKey, text: string) => readQuantity(key, text).refusal?.write;

describe('what to write instead', () => {
  it.each([
    ['arrow.mass', '4_52 gr', '"452 gr"'],
    ['arrow.mass', '4_52', '"452 gr" or "29.3 g"'],
    ['launch.speed', '280-282 fps', '"281 fps", the mean of the two'],
    ['launch.speed', '280 fps to 282 fps', '"281 fps", the mean of the two'],
    ['arrow.parts.shaft.length', '28.5', '"28.5 in" or "28.5 cm"'],
    ['sight.zero_range', '20', '"20 yd" or "20 m"'],
    ['bow.peep_height', '33 in', 'a value within the limits, such as "4.6 in"'],
  ] as const)('of %s: %s is %s', (key, text, write) => expect(insteadOf(key, text)).toBe(write));

  const keys = Object.keys(LIMITS).filter((key): key is LimitKey => key in LIMITS);
  const typed = [
    '1/2',
    '5000',
    '1,250 ft',
    '9999-9998 in',
    '70#',
    '3 in.',
    '-4',
    '900_000 gr',
    '12 constructor',
  ];
  it.each(keys)('of %s never lies outside the limits', (key) => {
    for (const text of typed) {
      const offered = [...(insteadOf(key, text) ?? '').matchAll(/"([^"]*)"/g)].map(([, each = '']) => each);
      for (const each of offered) expect([each, readQuantity(key, each).refusal]).toEqual([each, undefined]);
    }
  });
});

it('peep height and peep to pin that stand in each other’s place are to be exchanged', () => {
  const text = SMALLEST.replace('4.6 in', '33 in').replace('peep_to_pin: 33 in', 'peep_to_pin: 4.6 in');
  expect(problemsOf(text).map(({ line, path, write }) => [line, path, write])).toEqual([
    [1, 'bow.peep_height', 'Swap bow.peep_height and sight.peep_to_pin'],
    [4, 'sight.peep_to_pin', 'Swap bow.peep_height and sight.peep_to_pin'],
  ]);
});

it('entries of lists are counted from 1 in messages, from 0 in paths', () => {
  const [problem] = problemsOf(EXAMPLE.replace('reading: 31.9', 'reading: 31.9 mm'));
  expect(problem?.path).toBe('marks.1.reading');
  expect(problem?.message).toMatch(/^setup\.yaml:\d+:\d+ {2}marks, entry 2: reading: "31\.9 mm" is /);
});

it('feet and inches read the same wherever a length belongs', () =>
  // Relative: a rounding or two of a double.
  expect(parseQuantity('2 ft 9 in', 'length')).toBeCloseTo(33 * 0.0254, 14 /* decimals of a metre */));
