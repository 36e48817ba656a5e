import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { reportText } from '../../../../src/cli/output/report-text.ts';
import { quietly } from '../../../../src/reports/occasion.ts';
import { QUESTIONS } from '../../../../src/reports/questions.ts';
import type { Reading, Report } from '../../../../src/reports/report.ts';
import { inUnits } from '../../../../src/reports/session.ts';
import { openSetup } from '../../../../src/setup/open.ts';

const example = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
const asked = (
  reading: Reading,
  given: Readonly<Record<string, string>>,
  uncalibrated: boolean,
): Promise<Report> => {
  const setup = openSetup(example, 'setup.yaml', { uncalibrated });
  return QUESTIONS.marks.ask([inUnits(setup, 'imperial')], given, 'imperial', {
    ...quietly('2026-11-26'),
    reading,
  });
};

// A short answer solves the marks that it shows and no others: fewer pins, on paths that span the same.
it.each([
  ['as it is asked most', {}, false],
  ['without marks that were shot, where it says how far to trust the rest', {}, true],
  ['from and to ranges that are no fives', { from: '23 yd', to: '98 yd' }, false],
  ['with so few ranges that each is told', { from: '61 yd', to: '63 yd' }, true],
  ['in half yards', { every: '0.5 yd', to: '250 yd' }, false],
  ['beyond where the arrow can be aimed', { to: '600 yd', every: '3 yd' }, false],
  ['from so near that marks turn back', { from: '3 yd' }, false],
] as const)(
  'the short reading of marks, asked for alone, is that of the whole: %s',
  async (_, given, uncalibrated) => {
    const [alone, whole] = await Promise.all([
      asked('short', given, uncalibrated),
      asked('whole', given, uncalibrated),
    ]);
    const short = ({ blocks }: Report) => reportText(blocks, { width: 80, reading: 'short', files: [] });
    expect(short(alone)).toBe(short(whole));
    expect(alone.rows.rows.length).toBeLessThanOrEqual(whole.rows.rows.length);
  },
);
