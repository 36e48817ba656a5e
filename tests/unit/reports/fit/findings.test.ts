import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { toSi } from '../../../../src/quantities/format.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fitFindings } from '../../../../src/reports/fit/findings.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const ranges = [20, 40, 60, 80, 100].map((yards) => si<'m'>(toSi(yards, 'yd')));
const YARD = si<'m'>(toSi(1, 'yd'));
const example = (name: string): string => readFileSync(`examples/${name}/setup.yaml`, 'utf8');

describe('fitFindings', () => {
  const opened = openSetup(example('mountain-hunt'), 'hunt.yaml');
  const found = fitFindings(opened, ranges, YARD);

  it('has an uncertainty for every range, smaller everywhere after one more group', () => {
    expect(found.sureness.map(({ range }) => range)).toEqual(ranges);
    for (const { now, after } of found.sureness) expect(Number(after)).toBeLessThan(Number(now));
  });

  it('names the tie with the largest correlation of all pairs, when it is 0.5 or more', () => {
    const course = openSetup(example('field-course'), 'course.yaml');
    const largest = ({ correlations }: typeof course.calibration): number =>
      Math.max(...correlations.flatMap((row, i) => row.filter((_, j) => j !== i).map(Math.abs)));
    expect(Math.abs(Number(fitFindings(course, ranges, YARD).tie?.correlation))).toBe(
      largest(course.calibration),
    );
    expect(largest(opened.calibration)).toBeLessThan(0.5);
    expect(found.tie).toBeNull();
  });

  it('tells no uncertainty of a scale that nothing ties to the arrow, and says that its marks cannot be read', () => {
    const text = example('field-course').replace(/( {2}- \{ range: 20 yd.*\n)[\s\S]*/, '$1');
    const untied = fitFindings(openSetup(text, 'course.yaml'), ranges, YARD);
    expect(untied.isUnreadable).toBe(true);
    expect(untied.sureness.map(({ now }) => now)).toEqual(ranges.map(() => null));
    expect(untied.next.isTold.now).toBe(false);
    expect(untied.parameters.filter(({ isShown }) => !isShown).map(({ name }) => name)).toEqual([
      'scale_offset',
    ]);
  });
});

describe('the next range', () => {
  const tape = [20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100].map((yards) =>
    si<'m'>(toSi(yards, 'yd')),
  );
  const marks = (lines: readonly string[], sight = ''): string =>
    `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 452 gr, drag_coefficient: 2.4 }
launch: { speed: 281 fps }
sight: { peep_to_pin: 33 in, zero_range: 20 yd${sight}, scale: { travel_per_unit: 1 mm, at_zero: 12.4 } }
${lines.length === 0 ? '' : 'marks:\n'}${lines.map((line) => `  - ${line}\n`).join('')}`;
  const nextOf = (text: string) => {
    const { next } = fitFindings(openSetup(text, 'my.yaml'), tape, YARD);
    return { ...next, yards: Math.round(next.range / 0.9144) };
  };
  const at20 = '{ range: 20 yd, reading: 12.4, arrows: 3, group: 1.2 in }';
  const at30 = '{ range: 30 yd, reading: 15.9, arrows: 3, group: 1.8 in }';

  it('is 20 yd, then 30, where nothing was shot', () => {
    const next = nextOf(marks([]));
    expect(next.yards).toBe(20);
    expect(next.begin.map((range) => Math.round(range / 0.9144))).toEqual([20, 30]);
  });
  it('is at most half as far again as the farthest mark that was hit', () => {
    expect(nextOf(marks([at20])).yards).toBeLessThanOrEqual(30);
    expect(nextOf(marks([at20, at30])).yards).toBeLessThanOrEqual(45);
    expect(nextOf(marks([at20, at30])).yards).toBeGreaterThan(30);
  });
  it('does not lie beyond the end of the range that is shot on', () => {
    expect(nextOf(marks([at20, at30], ', range_length: 35 yd')).yards).toBeLessThanOrEqual(35);
    expect(nextOf(marks([], ', range_length: 18 yd')).yards).toBe(18);
    expect(nextOf(marks([at20, at30], ', range_length: 18 yd')).yards).toBe(18);
  });
  it('is where nearly every arrow would be on a target of 4 ft: not at 90 yd for 0.2 in of spread a yard', () => {
    const wide = [20, 40, 60].map(
      (range, i) =>
        `{ range: ${range} yd, reading: ${[12.4, 20.1, 30.6][i]}, arrows: 6, group: ${0.8 * range} in }`,
    );
    // 24 in are two standard deviations of 12 in: of 0.2 in a yard that is at 60 yd.
    expect(nextOf(marks(wide)).yards).toBeLessThanOrEqual(60);
  });
});
