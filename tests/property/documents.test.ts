import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOutCard } from '../../src/documents/page/card.ts';
import { itemsOf } from '../../src/documents/page/drawing.ts';
import { niceAxis, niceTicks } from '../../src/documents/plot/nice-ticks.ts';
import { plotItems } from '../../src/documents/plot/plot.ts';
import type { Plot } from '../../src/documents/plot/plot-data.ts';
import { plotText } from '../../src/documents/plot/terminal-plot.ts';
import { renderTableCsv, renderTableText } from '../../src/documents/render/text.ts';
import { numberText } from '../../src/documents/table/number-text.ts';
import type { Cell, Table } from '../../src/documents/table/table.ts';
import { inkBox, inkOutside, isInside, overlaps, unprintableEdge } from '../unit/documents/ink-box.ts';

const runs = { seed: 20261125, numRuns: 60 };
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const words = fc.string({ unit: 'grapheme', maxLength: 60 });

describe('nice ticks', () => {
  const range = fc
    .tuple(within(-1e6, 1e6), within(1e-3, 1e6))
    .map(([low, span]): readonly [number, number] => [low, low + span]);

  it('lie in the range, no more than asked, evenly spaced by 1, 2 or 5', () =>
    fc.assert(
      fc.property(range, fc.integer({ min: 2, max: 20 }), ([low, high], atMost) => {
        const { step, values } = niceTicks(low, high, atMost);
        expect(values.length).toBeLessThanOrEqual(atMost);
        expect([1, 2, 5]).toContain(Number(step.toExponential().split('e')[0]));
        for (const value of values) {
          expect(value).toBeGreaterThanOrEqual(low - 1e-6 * step);
          expect(value).toBeLessThanOrEqual(high + 1e-6 * step);
        }
      }),
      runs,
    ));

  it('enclose the range on an axis', () =>
    fc.assert(
      fc.property(range, fc.integer({ min: 3, max: 20 }), ([low, high], atMost) => {
        const { step, values } = niceAxis(low, high, atMost);
        expect(values.length).toBeLessThanOrEqual(atMost);
        expect(values[0]).toBeLessThanOrEqual(low + 1e-6 * step);
        expect(values.at(-1)).toBeGreaterThanOrEqual(high - 1e-6 * step);
      }),
      runs,
    ));
});

const cell: fc.Arbitrary<Cell> = fc.oneof(within(-1e5, 1e5), fc.constant(null), fc.constant(-0), words);
const table: fc.Arbitrary<Table> = fc.integer({ min: 1, max: 4 }).chain((width) =>
  fc.record({
    title: words,
    columns: fc.array(fc.record({ name: words, unit: words, digits: fc.integer({ min: 0, max: 3 }) }), {
      minLength: width,
      maxLength: width,
    }),
    rows: fc.array(fc.array(cell, { minLength: width, maxLength: width }), { maxLength: 120 }),
    notes: fc.array(words, { maxLength: 2 }),
  }),
);

/** An independent reader of RFC 4180: fields of rows. */
function csvFields(text: string): readonly (readonly string[])[] {
  const rows: string[][] = [[]];
  for (const [, quoted, plain = '', end] of text.matchAll(/(?:"((?:[^"]|"")*)"|([^",\r\n]*))(,|\r\n|$)/g)) {
    if (end === '' && plain === '' && quoted === undefined) break;
    rows.at(-1)?.push(quoted === undefined ? plain : quoted.replaceAll('""', '"'));
    if (end === '\r\n') rows.push([]);
  }
  return rows.slice(0, -1);
}

describe('any table', () => {
  // Words that a spreadsheet would run as a formula stand after an apostrophe.
  const shown = (words: string): string => (/^'\s*\S/.test(words) ? words.slice(1) : words);

  it('reads back from CSV with every field', () =>
    fc.assert(
      fc.property(table, (given) => {
        const rows = csvFields(renderTableCsv(given));
        expect(rows).toHaveLength(given.rows.length + 1);
        for (const [i, row] of given.rows.entries())
          expect(rows[i + 1]?.map((field, j) => (row[j] === field ? field : shown(field)))).toEqual(
            row.map((value, j) =>
              typeof value === 'number' ? numberText(value, given.columns[j]?.digits) : (value ?? ''),
            ),
          );
      }),
      runs,
    ));

  it('never prints a minus before nothing', () =>
    fc.assert(
      fc.property(fc.array(within(-0.01, 0.01), { maxLength: 20 }), (values) => {
        const given = {
          columns: [{ name: 'x', unit: 'm', digits: 1 }],
          rows: values.map((value) => [value]),
        };
        expect(renderTableText(given) + renderTableCsv(given)).not.toMatch(/-0(\.0*)?(?!\.?\d)/);
      }),
      runs,
    ));
});

const point = fc.record({ x: within(-1e3, 1e3), y: within(-1e3, 1e3), error: within(0, 100) });
const series = fc.record({
  name: words,
  kind: fc.constantFrom('line' as const, 'points' as const),
  points: fc.array(point, { minLength: 1, maxLength: 30 }),
});
const marker = fc.record({
  axis: fc.constantFrom('x' as const, 'y' as const),
  at: within(-1e3, 1e3),
  label: words,
});
const plot: fc.Arbitrary<Plot> = fc.record({
  title: words,
  x: fc.record({ label: words, unit: words }),
  y: fc.record({ label: words, unit: words }),
  series: fc.array(series, { minLength: 1, maxLength: 4 }),
  markers: fc.array(marker, { maxLength: 2 }),
});

describe('any plot', () => {
  it('stays inside its rectangle on paper', () =>
    fc.assert(
      fc.property(plot, within(80, 190), within(100, 200), (given, width, height) => {
        const rect = { x: 10, y: 20, width, height };
        const box = { left: 10, top: 20, right: 10 + width, bottom: 20 + height };
        expect(plotItems(given, rect).filter((item) => !isInside(inkBox(item), box))).toEqual([]);
      }),
      runs,
    ));

  it('stays inside its width in a terminal and has the same lines every time', () =>
    fc.assert(
      fc.property(
        plot,
        fc.integer({ min: 80, max: 120 }),
        fc.integer({ min: 20, max: 40 }),
        (given, width, height) => {
          const text = plotText(given, { width, height });
          expect(plotText(given, { width, height })).toBe(text);
          const wide = text
            .split('\n')
            .filter((line) => /[│┤└]/u.test(line) && Array.from(line).length > width);
          expect(wide).toEqual([]);
        },
      ),
      runs,
    ));
});

describe('any card', () => {
  const card = fc.record({
    title: words,
    subtitle: fc.array(words, { maxLength: 3 }),
    tables: fc.array(
      table.map((given) => ({
        ...given,
        columns: given.columns.map((column, i) => ({ ...column, name: `c${i}`, unit: 'm' })),
        rows: given.rows.map((row) =>
          row.map((value) => (typeof value === 'string' ? value.slice(0, 12) : value)),
        ),
      })),
      { maxLength: 4 },
    ),
    plots: fc.array(
      plot.map((given) => ({ ...given, series: given.series.slice(0, 2) })),
      { maxLength: 3 },
    ),
    notes: fc.array(words, { maxLength: 3 }),
    cautions: fc.array(words, { maxLength: 3 }),
  });

  it('keeps all ink on printable paper and no text over another', () =>
    fc.assert(
      fc.property(card, fc.constantFrom('a4' as const, 'letter' as const), (content, paper) => {
        for (const page of layOutCard(content, paper).pages) {
          expect(inkOutside(page, unprintableEdge)).toEqual([]);
          const cells = itemsOf(page).filter(
            (item) => item.kind === 'text' && item.role !== 'axis' && item.text.trim() !== '',
          );
          expect(overlaps(cells.map(inkBox))).toEqual([]);
        }
      }),
      { ...runs, numRuns: 30 },
    ));
});
