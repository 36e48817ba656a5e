import { describe, expect, it } from 'vitest';
import { rangeDigits } from '../../src/documents/table/range-digits.ts';
import { displayUnits } from '../../src/quantities/display-units.ts';
import { atTerminal } from './terminal.ts';

const example = 'examples/mountain-hunt/setup.yaml';
const YARD = 0.9144;
const yards = displayUnits('imperial');

describe('decimals of a range', () => {
  it.each([
    ['whole yards', [10, 20, 30], 0],
    ['half yards', [10, 10.5], 1],
    ['quarter yards', [10, 10.25, 10.5], 2],
    ['eighths', [10.125], 3],
    ['thirds, which no decimal ends', [1 / 3], 3],
    ['none at all', [], 0],
  ])('are as many as %s need', (_, values, digits) => {
    expect(
      rangeDigits(
        values.map((value) => value * YARD),
        yards,
      ),
    ).toBe(digits);
  });
  it('forgive what counting in steps leaves behind', () => {
    expect(rangeDigits([Number((3 * 0.1 * YARD).toFixed(10))], yards)).toBe(1);
  });
});

const columnOf = (csv: string): readonly string[] =>
  csv
    .trim()
    .split(/\r?\n/)
    .slice(1)
    .map((line) => line.split(',')[0] ?? '');

it('a step of a quarter of a yard has a name of its own in every row', async () => {
  const { out } = await atTerminal(['fly', example, '--to', '3yd', '--every', '0.25yd', '--csv']);
  const ranges = columnOf(out);
  expect(new Set(ranges).size).toBe(ranges.length);
  expect(ranges).toContain('2.25');
});
