import { expect, it } from 'vitest';
import { displayUnits } from '../../../src/quantities/display-units.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { surenessWords } from '../../../src/reports/sureness-words.ts';

const units = displayUnits('imperial');
const YARD = 0.9144; // m, by definition
const INCH = 0.0254; // m, by definition
/** Standard errors on the target, in, by range, yd. */
const words = (inches: Readonly<Record<number, number>>, calibrated = true) =>
  surenessWords(
    Object.entries(inches).map(([yards, sd]) => ({
      range: si<'m'>(Number(yards) * YARD),
      onTargetSd: si<'m'>(sd * INCH),
    })),
    units,
    { calibrated, from: si(20 * YARD) },
  );

it('tells how good marks are at the zero, half-way and at the last', () =>
  expect(words({ 10: 0.3, 20: 0.2, 60: 0.6, 100: 2.2 })).toBe(
    'Good to ± 0.2 in at 20 yd, 0.6 in at 60 yd and 2.2 in at 100 yd.',
  ));

// 2 m is 78.7 in: farther out than the arrow is known for, the nearer marks are as good as they were.
it('does not take marks for untied because a range is so far that nothing is known there', () =>
  expect(words({ 20: 0.2, 100: 8, 200: 60, 250: 78, 300: 79 })).toBe(
    'Good to ± 0.2 in at 20 yd, 8.0 in at 100 yd and 78.0 in at 250 yd. From 300 yd on, a mark may be anything.',
  ));

it('says that no mark ties the scale where hardly a mark beyond the zero is known', () => {
  const untied = 'No mark ties the numbers of the scale to the arrow yet, so a reading may be anything.';
  expect(words({ 20: 0.2, 40: 90, 60: 200 })).toBe(untied);
  expect(words({ 20: 0.2, 40: 70, 60: 200, 80: 300 })).toBe(untied);
  expect(words({ 20: 90, 40: 90, 60: 90 })).toBe(untied);
});

it('is empty without marks', () => expect(words({})).toBe(''));
