import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { toSi } from '../../../../src/quantities/format.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fitFindings } from '../../../../src/reports/fit/findings.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const ranges = [20, 40, 60, 80, 100].map((yards) => si<'m'>(toSi(yards, 'yd')));
const example = (name: string): string => readFileSync(`examples/${name}/setup.yaml`, 'utf8');

describe('fitFindings', () => {
  const opened = openSetup(example('mountain-hunt'), 'hunt.yaml');
  const found = fitFindings(opened, ranges, si(yards(1)));

  it('has an uncertainty for every range, smaller everywhere after one more group', () => {
    expect(found.sureness.map(({ range }) => range)).toEqual(ranges);
    for (const { now, after } of found.sureness) expect(Number(after)).toBeLessThan(Number(now));
  });

  it('names the tie with the largest correlation of all pairs, when it is 0.5 or more', () => {
    const course = openSetup(example('field-course'), 'course.yaml');
    const largest = ({ correlations }: typeof course.calibration): number =>
      Math.max(...correlations.flatMap((row, i) => row.filter((_, j) => j !== i).map(Math.abs)));
    expect(Math.abs(Number(fitFindings(course, ranges, si(yards(1))).tie?.correlation))).toBe(largest(course.calibration));
    expect(largest(opened.calibration)).toBeLessThan(0.5);
    expect(found.tie).toBeNull();
  });

  it('tells no uncertainty of a scale that nothing ties to the arrow, and says that its marks cannot be read', () => {
    const text = example('field-course').replace(/( {2}- \{ range: 20 yd.*\n)[\s\S]*/, '$1');
    const untied = fitFindings(openSetup(text, 'course.yaml'), ranges, si(yards(1)));
    expect(untied.isUnreadable).toBe(true);
    expect(untied.sureness.map(({ now }) => now)).toEqual(ranges.map(() => null));
    expect(untied.next.isTold.now).toBe(false);
    expect(untied.parameters.filter(({ isShown }) => !isShown).map(({ name }) => name)).toEqual([
      'scale_offset',
    ]);
  });
});
