import { describe, expect, it } from 'vitest';
import { si } from '../../../../src/quantities/quantity.ts';
import { changeLines, dayLines, wildLines } from '../../../../src/reports/fit/day-words.ts';
import { fitFindings } from '../../../../src/reports/fit/findings.ts';
import { inUnits } from '../../../../src/reports/session.ts';
import { warnings } from '../../../../src/reports/warnings.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { EXACT, fileWith, measured, writtenDay } from '../../calibration/invented-days.ts';
import { yards } from '../../sight/invented-rig.ts';

const RANGES = [20, 60, 100].map((range) => si<'m'>(yards(range)));
const season = (slipped: number, dates: readonly string[]) => {
  const days = dates.map((date, k) =>
    writtenDay(
      measured,
      { date, kelvin: 288.15 + k, pressure: 1000, slipped: k === dates.length - 1 ? slipped : 0 },
      [20, 40, 60],
      EXACT,
    ),
  );
  const session = inUnits(openSetup(fileWith(`days:\n${days.join('')}`), 'days.yaml'), 'imperial');
  return { session, found: fitFindings(session, RANGES, si(yards(1))) };
};

describe('what a fit says of days', () => {
  it('is a line a day with its number and error, and from three days on whether they agree', () => {
    const { session, found } = season(0, ['2026-06-01', '2026-07-01', '2026-08-01']);
    const lines = dayLines(found, session.units);
    expect(lines).toHaveLength(4);
    expect(lines[0]).toMatch(/^On 2026-06-01 \(3 measurements\) .* 0\.\d ft\/s .* \(± 0\.\d ft\/s\)/);
    expect(lines[3]).toMatch(/^The days agree as evenings of one bow do \(chance .* \d+ %\)/);
    expect(found.days.map(({ temperature }) => temperature)).toEqual([288.15, 289.15, 290.15]);
    expect(dayLines(season(0, ['2026-06-01', '2026-07-01']).found, session.units)).toHaveLength(2);
  });

  it('names a peep that slipped by 2 mm before the last day, first of all', () => {
    const { session, found } = season(2e-3, ['2026-06-01', '2026-07-01', '2026-08-01']);
    const [line = ''] = changeLines(found, session.units);
    expect(line).toContain('The bow has changed by 2026-08-01');
    expect(line).toMatch(/the peep has slipped up, or the pin gone down, by (1\.[89]|2\.[0-2]) mm/);
  });
});

it('a wild arrow is named with its place, and its group is as if it had not been shot', () => {
  const hits = '[1 in, 0 in], [-1 in, 0.5 in], [0 in, 1 in], [0 in, -1.5 in]';
  const file = (list: string) => fileWith(`marks:\n  - { range: 60 yd, reading: 31, hits: [${list}] }\n`);
  const [wild, tame] = [`${hits}, [-14 in, -6 in]`, hits].map((list) =>
    inUnits(openSetup(file(list), 'hits.yaml'), 'imperial'),
  );
  if (wild === undefined || tame === undefined) expect.fail();
  const [line, ...others] = wildLines(fitFindings(wild, RANGES, si(yards(1))), wild.units);
  expect(line).toMatch(/^Arrow 5 of the 60 yd group, 14\.0 in left and 6\.0 in low, does not belong/);
  expect(others).toEqual([]);
  expect(wild.calibration.values).toEqual(tame.calibration.values);
  // By hand: the middle is 0, its squares 1 + 1.25 + 1 + 2.25 = 5.5 in², so 5.5/6 for one arrow in one direction.
  expect(tame.assembly.problem.measurements[0]).toMatchObject({ vertical: 0 });
});

it('a speed that nobody measured is told wherever marks are', () => {
  const file = fileWith(
    'marks:\n  - { range: 40 yd, reading: 20.9 }\n  - { range: 60 yd, reading: 31 }\n',
  ).replace('281 fps', 'unknown');
  const [told] = warnings(inUnits(openSetup(file, 'unknown.yaml'), 'imperial'));
  expect(told).toMatch(
    /^Nobody measured the launch speed: 2\d\d ft\/s ± \d+ ft\/s comes from what compound bows shoot and/,
  );
});
