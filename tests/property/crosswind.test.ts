import { describe, expect, it } from 'vitest';
import { rootMeanSquare } from '../unit/calibration/invented-archers.ts';
import { type WindTrial, windTrial } from '../unit/calibration/sideways/invented-winds.ts';

/** Enough to tell 5 % from the 77 % of before. */
const ARCHERS = 20;
const nine = { ranges: [20, 30, 40, 50, 60, 70, 80, 90, 100], arrows: 12 };
const four = { ranges: [20, 40, 60, 80], arrows: 6 };

const cases: readonly (readonly [string, Omit<WindTrial, 'lean'>])[] = [
  ['a steady 3 mph, nine groups of twelve', { ...nine, wind: () => 3 }],
  ['a steady 6 mph, nine groups of twelve', { ...nine, wind: () => 6 }],
  ['5 mph from 60 yd on, nine groups of twelve', { ...nine, wind: (range) => (range < 60 ? 0 : 5) }],
  ['a steady 6 mph, four groups of six', { ...four, wind: () => 6 }],
];

describe('a wind that nobody wrote down is not confidently taken for a lean', () => {
  it.each(cases)('%s', (_, trial) => {
    const found = Array.from({ length: ARCHERS }, (__, i) => windTrial({ ...trial, lean: 0 }, i));
    expect(found.filter(({ verdict }) => verdict.worthDoing).length).toBeLessThanOrEqual(0.05 * ARCHERS);
    expect(rootMeanSquare(found.map(({ score }) => score))).toBeLessThan(1.5);
  });
});

it('in still air the errors of leans of a degree or so hold, and are not far too large', () => {
  const score = rootMeanSquare(
    Array.from({ length: ARCHERS }, (_, i) => windTrial({ ...nine, wind: () => 0 }, i).score),
  );
  expect(score).toBeGreaterThan(0.6);
  expect(score).toBeLessThan(1.5);
});
