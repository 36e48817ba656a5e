import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { layOutCard } from '../../src/documents/card.ts';
import { type Item, unprintableEdge } from '../../src/documents/drawing.ts';
import { niceAxis, niceTicks } from '../../src/documents/nice-ticks.ts';
import { numberText } from '../../src/documents/number-text.ts';
import { plotItems } from '../../src/documents/plot.ts';
import type { Plot } from '../../src/documents/plot-data.ts';
import { renderSvg } from '../../src/documents/render/svg.ts';
import { renderTableCsv, renderTableText } from '../../src/documents/render/text.ts';
import type { Cell, Table } from '../../src/documents/table.ts';
import { layOutTape } from '../../src/documents/tape.ts';
import type { TapeContent, TapeTick } from '../../src/documents/tape-content.ts';
import { leastShift } from '../../src/documents/tape-labels.ts';
import { plotText } from '../../src/documents/terminal-plot.ts';
import { si } from '../../src/quantities/quantity.ts';
import { inkBox, inkOutside, isInside, overlaps, withRole } from '../unit/documents/ink-box.ts';
import { inventedTicks } from '../unit/documents/invented-tape.ts';

const runs = { seed: 20261125, numRuns: 60 };
const within = (min: number, max: number) => fc.double({ min, max, noNaN: true });

/** Tapes as physics makes them: marks that fall, turn back and rise. */
const turningBack = fc
  .record({
    speed: within(50, 110),
    peepHeight: within(0.05, 0.2),
    reach: within(0.05, 0.9),
    from: fc.integer({ min: 3, max: 30 }),
    count: fc.integer({ min: 1, max: 70 }),
    step: fc.constantFrom(0.9144, 1),
  })
  .map(({ from, count, step, ...setup }) => inventedTicks(from, from + count, setup, step));

/** Tapes as nothing makes them: any rising steps, many of them zero. */
const rising = fc
  .record({
    from: fc.integer({ min: 1, max: 90 }),
    near: fc.integer({ min: 0, max: 12 }),
    steps: fc.array(fc.oneof(fc.constant(0), within(0, 2e-3)), { minLength: 1, maxLength: 80 }),
  })
  .map(({ from, near, steps }): readonly TapeTick[] => {
    let along = -0.01;
    return steps.map((step, i) => {
      along += step;
      const branch = i < near ? 'near' : 'far';
      return { range: si(from + i), label: from + i, along: si(along), branch };
    });
  });

const ticks = fc.oneof(turningBack, rising);
/** Refused, with a reason. */
const areCrowded = (tape: readonly TapeTick[]): boolean => {
  const along = tape.map((tick) => tick.along);
  return (
    tape.length > 10 && Math.max(...along) - Math.min(...along) < Math.min(0.01, 0.00025 * (tape.length - 1))
  );
};
const words = fc.string({ unit: 'grapheme', maxLength: 60 });
const tape: fc.Arbitrary<TapeContent> = fc
  .record({
    title: words,
    subtitle: fc.array(words, { maxLength: 3 }),
    name: words,
    unit: fc.constantFrom('yd' as const, 'm' as const),
    increases: fc.constantFrom('down' as const, 'up' as const),
    ticks,
    zero: fc.constantFrom('far' as const, 'near' as const).map((branch) => ({ range: si<'m'>(18), branch })),
    neighbours: fc.array(fc.record({ name: words, ticks }), { maxLength: 3 }),
    warnings: fc.array(words, { maxLength: 3 }),
  })
  .filter(({ ticks }) => !areCrowded(ticks))
  .map((content) => ({ ...content, calibration: content.ticks.filter((_, i) => i % 7 === 0) }));
const print = fc.record({
  paper: fc.constantFrom('a4' as const, 'letter' as const),
  copies: fc.integer({ min: 1, max: 4 }),
  pointer: fc.constantFrom('left' as const, 'right' as const),
});

const boxesOf = (items: readonly Item[], role: string) => withRole(items, 'text', role).map(inkBox);

describe('any tape', () => {
  const each = (
    check: (content: TapeContent, pages: ReturnType<typeof layOutTape>['pages'], copies: number) => void,
  ) =>
    fc.assert(
      fc.property(tape, print, (content, how) => check(content, layOutTape(content, how).pages, how.copies)),
      runs,
    );

  it('has no label over another', () =>
    each((_, pages) => {
      for (const { items } of pages) expect(overlaps(boxesOf(items, 'label'))).toEqual([]);
    }));

  it('has no text over a label', () =>
    each((_, pages) => {
      for (const { items } of pages)
        expect(
          overlaps([...boxesOf(items, 'label'), ...boxesOf(items, 'name'), ...boxesOf(items, 'caption')]),
        ).toEqual([]);
    }));

  it('keeps all ink on printable paper', () =>
    each((_, pages) => {
      for (const page of pages) expect(inkOutside(page, unprintableEdge)).toEqual([]);
    }));

  it('draws every requested tick exactly once on each strip, at its mark', () =>
    each((content, pages, copies) => {
      const all = pages.flatMap(({ items }) => items);
      const zeros = all.flatMap((item) =>
        item.kind === 'polyline' && (item.role === 'zero' || item.role === 'zero-shot')
          ? [item.points[0]?.y ?? 0]
          : [],
      );
      const strips = [
        ...Array.from({ length: copies }, () => content.ticks),
        ...content.neighbours.map((n) => n.ticks),
      ];
      const down = content.increases === 'down' ? 1000 : -1000;
      const wanted = strips.flatMap((strip, i) => strip.map(({ along }) => (zeros[i] ?? 0) + down * along));
      const drawn = withRole(all, 'line', 'tick').map(({ from }) => from.y);
      expect(zeros).toHaveLength(strips.length);
      expect(drawn).toHaveLength(wanted.length);
      expect(Math.max(...drawn.map((y, i) => Math.abs(y - (wanted[i] ?? Number.NaN))))).toBeLessThan(
        1e-9 /* mm */,
      );
    }));

  it('labels every ten of every strip', () =>
    each((content, pages, copies) => {
      const tens = (of: readonly TapeTick[]) => of.filter(({ label }) => label % 10 === 0).length;
      const wanted =
        copies * tens(content.ticks) + content.neighbours.reduce((sum, n) => sum + tens(n.ticks), 0);
      const drawn = pages
        .flatMap(({ items }) => withRole(items, 'text', 'label'))
        .filter(({ text }) => Number(text) % 10 === 0);
      expect(drawn).toHaveLength(wanted);
    }));

  it('is well-formed XML as SVG: no raw markup, no forbidden character', () =>
    each((content, [page]) => {
      const svg = page === undefined ? '' : renderSvg(page, { title: content.title });
      const texts = svg.replaceAll(/<\/?(svg|title|rect|line|polygon|polyline|text)\b[^<>]*>/g, '');
      expect(texts).not.toMatch(/[<>]|&(?!(amp|lt|gt|quot|#39);)/);
      expect(svg).not.toMatch(/[^\n\P{Cc}]|\p{Cs}/u);
      expect(svg).not.toMatch(/NaN|Infinity|undefined/);
    }));
});

describe('leastShift', () => {
  const wanted = fc
    .array(within(-50, 50), { maxLength: 30 })
    .map((values) => values.toSorted((a, b) => a - b));

  it('keeps its distance, within rounding', () =>
    fc.assert(
      fc.property(wanted, within(0.1, 5), (values, gap) => {
        const placed = leastShift(values, gap);
        const gaps = placed.slice(1).map((at, i) => at - (placed[i] ?? at));
        expect(placed).toHaveLength(values.length);
        expect(Math.min(gap, ...gaps)).toBeGreaterThan(gap - 1e-9);
      }),
      runs,
    ));

  it('moves a crowd no further in sum of squares than spreading it about its middle does', () =>
    fc.assert(
      fc.property(wanted, within(0.1, 5), (values, gap) => {
        const cost = (placed: readonly number[]) =>
          placed.reduce((sum, at, i) => sum + (at - (values[i] ?? at)) ** 2, 0);
        const widest = Math.max(gap, ...values.slice(1).map((at, i) => at - (values[i] ?? at)));
        const middle = values.reduce((a, b) => a + b, 0) / Math.max(1, values.length);
        const simple = values.map((_, i) => middle + (i - (values.length - 1) / 2) * widest);
        expect(cost(leastShift(values, gap))).toBeLessThanOrEqual(cost(simple) + 1e-6);
      }),
      runs,
    ));
});

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
  it('reads back from CSV with every field', () =>
    fc.assert(
      fc.property(table, (given) => {
        const rows = csvFields(renderTableCsv(given));
        expect(rows).toHaveLength(given.rows.length + 1);
        for (const [i, row] of given.rows.entries())
          expect(rows[i + 1]).toEqual(
            row.map((value, j) =>
              value === null
                ? ''
                : typeof value === 'number'
                  ? numberText(value, given.columns[j]?.digits)
                  : value,
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
          const cells = page.items.filter(
            (item) => item.kind === 'text' && item.role !== 'axis' && item.text.trim() !== '',
          );
          expect(overlaps(cells.map(inkBox))).toEqual([]);
        }
      }),
      { ...runs, numRuns: 30 },
    ));
});
