import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  type Baseline,
  baselineOf,
  betterOf,
  type Figure,
  figureLine,
  MARGIN,
  whatGotSlower,
} from '../../bench/figure.ts';

const flight = (ratio: number): Figure => ({ name: 'a flight', ratio, of: 'bare odex', target: 0.6 });
const marks = (ratio: number): Figure => ({ name: 'marks', ratio, of: 'node -e 0' });
const baseline: Baseline = { 'a flight': 0.5, marks: 2 };

describe('whatGotSlower', () => {
  it('says nothing of what is as fast, faster, or slower by no more than the margin', () => {
    expect(whatGotSlower(baseline, [flight(0.5), marks(1)])).toEqual([]);
    expect(whatGotSlower(baseline, [flight(0.5 * (1 + MARGIN)), marks(2 * (1 + MARGIN))])).toEqual([]);
  });

  it('says in words what got slower, and by how much', () => {
    // 0.75 over 0.5 is half as much again.
    expect(whatGotSlower(baseline, [flight(0.75), marks(2)])).toEqual([
      '"a flight" is 0.750 times bare odex; it was 0.500 times, so 50 % more.',
    ]);
  });

  it('passes nothing over that only one of the two lists knows, or that is no number', () => {
    expect(whatGotSlower(baseline, [flight(0.5)])).toEqual([
      '"marks" is in the baseline, and nothing measured it.',
    ]);
    expect(whatGotSlower({ marks: 2 }, [marks(2), flight(0.5)])).toEqual([
      '"a flight" is not in the baseline: write it with npm run bench -- --keep.',
    ]);
    expect(whatGotSlower({ marks: 2 }, [marks(Number.NaN)])).toEqual(['"marks" could not be measured.']);
  });
});

it('a baseline is kept to three digits, and what was measured passes against it', () => {
  const figures = [flight(0.49949), marks(2.3456)];
  expect(baselineOf(figures)).toEqual({ 'a flight': 0.499, marks: 2.35 });
  expect(whatGotSlower(baselineOf(figures), figures)).toEqual([]);
});

it('of two measurements the better of each counts', () =>
  expect(betterOf([flight(0.5), marks(3)], [marks(2), flight(0.7)])).toEqual([flight(0.5), marks(2)]));

it('a figure is a line with its target', () => {
  expect(figureLine({ ...flight(0.5123), more: '40 us' })).toBe(
    'a flight: 0.512 times bare odex (target 0.6); 40 us',
  );
  expect(figureLine(marks(2))).toBe('marks: 2.00 times node -e 0');
});

it('the baseline in the repository is a list of ratios', () => {
  const kept: Baseline = JSON.parse(readFileSync('tests/bench/baseline.json', 'utf8'));
  expect(Object.keys(kept).length).toBeGreaterThan(10);
  for (const [name, ratio] of Object.entries(kept)) expect(ratio, name).toBeGreaterThan(0);
});
