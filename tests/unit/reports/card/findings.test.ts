import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { at } from '../../../../src/numerics/at.ts';
import { displayUnits } from '../../../../src/quantities/display-units.ts';
import { toSi } from '../../../../src/quantities/format.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { cardFindings } from '../../../../src/reports/card/findings.ts';
import { markPaths } from '../../../../src/reports/card/paths.ts';
import { belowZeroNotes } from '../../../../src/reports/card/words.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const yards = (count: number) => si<'m'>(toSi(count, 'yd'));
const asked = {
  ranges: [20, 40, 60, 80].map(yards),
  slopes: [toSi(30, 'deg')],
  slopeRanges: [40, 80].map(yards),
  crosswind: si<'m/s'>(4),
  whole: yards(1),
};
const hunt = openSetup(readFileSync('examples/mountain-hunt/setup.yaml', 'utf8'), 'hunt.yaml');
const course = readFileSync('examples/field-course/setup.yaml', 'utf8');

describe('cardFindings', () => {
  const found = cardFindings(hunt, asked);

  it('tells of every range the shot that arrives there: E = m v²/2 and p = m v, so E = p v/2', () => {
    expect(found.rows.map(({ mark }) => mark.range)).toEqual(asked.ranges);
    for (const { energy, momentum, speed } of found.rows)
      expect(Math.abs(energy / ((momentum * speed) / 2) - 1)).toBeLessThan(1e-12 /* of itself: rounding */);
  });

  it('an arrow with each mark set is slower, later and blown farther at a farther range', () => {
    for (const [i, row] of found.rows.slice(1).entries()) {
      const nearer = at(found.rows, i);
      expect(row.speed).toBeLessThan(nearer.speed);
      expect(row.time).toBeGreaterThan(nearer.time);
      expect(row.windDrift).toBeGreaterThan(nearer.windDrift);
    }
  });

  it('says from where on the readings lie below the zero of a scale that grows upward, and that it goes on to the end', () => {
    // The course's groups read 12.8 at 55 yd and fall by more than a unit a yard: below zero well before 80 yd.
    const { rows, belowZero } = cardFindings(openSetup(course, 'course.yaml'), asked);
    expect(rows.map(({ mark }) => Number(mark.reading) < 0)).toEqual([false, false, false, true]);
    expect(belowZero).toEqual({ from: yards(80), to: yards(80), isToTheEnd: true });
    expect(found.belowZero).toBeNull();
    expect(belowZeroNotes(found, displayUnits('imperial'))).toEqual([]);
  });

  it('tells no uncertainty of marks that nothing ties to the arrow', () => {
    const oneMark = course.replace(/( {2}- \{ range: 20 yd.*\n)[\s\S]*/, '$1');
    const untied = cardFindings(openSetup(oneMark, 'course.yaml'), asked);
    expect([found.isTied, untied.isTied]).toEqual([true, false]);
    expect(at(untied.rows, 3).toldSd).toBeNull();
  });
});

describe('markPaths', () => {
  it('each path ends on the line of sight at the range whose mark is set', () => {
    for (const { range, points } of markPaths(hunt, asked.ranges)) {
      const last = at(points, points.length - 1);
      expect(Math.abs(last.range - range)).toBeLessThan(1e-12 /* m: rounding of a division */);
      expect(Math.abs(last.height)).toBeLessThan(1e-5 /* m: a hundredth of what the target is measured to */);
    }
  });
});
