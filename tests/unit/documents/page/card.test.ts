import { describe, expect, it } from 'vitest';
import { type CardContent, layOutCard } from '../../../../src/documents/page/card.ts';
import { type Drawing, itemsOf } from '../../../../src/documents/page/drawing.ts';
import type { Plot } from '../../../../src/documents/plot/plot-data.ts';
import type { Table } from '../../../../src/documents/table/table.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { inkBox, inkOutside, overlaps, unprintableEdge, withRole } from '../ink-box.ts';

const marks = (rows: number): Table => ({
  title: 'Marks',
  columns: [
    { name: 'range', unit: 'yd', digits: 0 },
    { name: 'mark', unit: 'mm', digits: 1 },
    { name: 'wind', unit: 'in' },
  ],
  rows: Array.from({ length: rows }, (_, i) => [10 + i, 1.5 * i, i === 3 ? null : -i / 8]),
  notes: ['Marks of an invented build.'],
});
/** A table that leaves no room beside it. */
const wide = (rows: number): Table => {
  const { columns, rows: narrow, ...table } = marks(rows);
  const times = Array.from({ length: 5 });
  return {
    ...table,
    columns: times.flatMap(() => columns),
    rows: narrow.map((row) => times.flatMap(() => row)),
  };
};
const plot: Plot = {
  title: 'Path',
  x: { label: 'range', unit: 'yd' },
  y: { label: 'height', unit: 'in' },
  series: [
    {
      name: 'path',
      kind: 'line',
      points: [
        { x: 0, y: 0 },
        { x: 100, y: -90 },
      ],
    },
  ],
};
const content: CardContent = {
  title: 'Invented camp',
  subtitle: ['452 gr at 281 ft/s'],
  tables: [marks(17), marks(5)],
  plots: [plot, plot],
  notes: ['A note.'],
  cautions: ['Every distance needs a backstop.'],
};
const texts = (drawing: Drawing) =>
  drawing.pages.map(({ items }) =>
    items.filter((item) => item.kind === 'text').filter(({ text }) => text.trim() !== ''),
  );

describe('layOutCard', () => {
  it.each(['a4', 'letter'] as const)('puts tables, plots, notes and cautions on one page of %s', (paper) => {
    const drawing = layOutCard(content, paper);
    expect(drawing.pages).toHaveLength(1);
    const words = texts(drawing)[0]?.map(({ text }) => text) ?? [];
    expect(words).toEqual(
      expect.arrayContaining([
        'Invented camp',
        'Marks',
        'Path',
        'A note.',
        'Caution',
        'Every distance needs a backstop.',
      ]),
    );
  });

  it.each([1, 17, 60, 200])('keeps everything apart and on printable paper with %d rows', (rows) => {
    const drawing = layOutCard({ ...content, tables: [marks(rows), marks(5)] }, 'a4');
    for (const page of drawing.pages) expect(inkOutside(page, unprintableEdge)).toEqual([]);
    for (const page of texts(drawing)) expect(overlaps(page.map(inkBox))).toEqual([]);
  });

  it('has no plot on a page of its own: with more rows it is left out, and the rows say how many pages there are', () => {
    let hasDropped = false;
    for (let rows = 17; rows <= 120; rows += 4) {
      const given = { ...content, tables: [wide(rows)], notes: [] };
      const drawing = layOutCard(given, 'a4');
      const alone = layOutCard({ ...given, plots: [] }, 'a4');
      const plots = drawing.pages.flatMap((page) => withRole(itemsOf(page), 'text', 'plot-title'));
      for (const items of drawing.pages.map(itemsOf))
        if (withRole(items, 'text', 'plot-title').length > 0)
          expect([...withRole(items, 'text', 'cell'), ...withRole(items, 'text', 'note')]).not.toEqual([]);
      if (plots.length === 0) expect(drawing.pages).toHaveLength(alone.pages.length);
      hasDropped ||= plots.length === 0;
    }
    expect(hasDropped).toBe(true);
  });

  it('goes on with a long table under a repeated head, every row once and in order', () => {
    const drawing = layOutCard({ ...content, tables: [marks(400)] }, 'letter');
    const items = drawing.pages.flatMap(itemsOf);
    const heads = withRole(items, 'text', 'column').filter(({ text }) => text === 'range');
    expect(drawing.pages.length).toBeGreaterThan(1);
    expect(heads.length).toBeGreaterThan(1);
    const firsts = new Set(heads.map(({ x }) => x));
    const ranges = withRole(items, 'text', 'cell')
      .filter(({ x }) => firsts.has(x))
      .map(({ text }) => Number(text));
    expect(ranges).toEqual(Array.from({ length: 400 }, (_, i) => 10 + i));
    expect(withRole(items, 'text', 'table-note')).toHaveLength(1);
  });

  it('numbers its pages only when there are several', () => {
    const numbers = (rows: number) =>
      layOutCard({ ...content, tables: [marks(rows)] }, 'a4').pages.flatMap((page) =>
        withRole(itemsOf(page), 'text', 'page-number').map(({ text }) => text),
      );
    expect(numbers(5)).toEqual([]);
    expect(numbers(400)[0]).toMatch(/^1 of \d$/);
  });

  it('stands decimal points of a column under one another', () => {
    const items = layOutCard(
      {
        ...content,
        tables: [{ columns: [{ name: 'x', unit: 'm' }], rows: [[1.25], [-10], [0.5], [null]] }],
        plots: [],
      },
      'a4',
    ).pages.flatMap(itemsOf);
    const cells = withRole(items, 'text', 'cell');
    const pointAt = cells.map((cell) => {
      const tail = cell.text.replace(/^[-−]?\d*/, '');
      return inkBox(cell).right - inkBox({ ...cell, text: tail, anchor: 'start', x: 0 }).right;
    });
    expect(cells.map(({ text }) => text)).toEqual(['1.25', '−10', '0.5', '-']);
    expect(Math.max(...pointAt.slice(0, 3)) - Math.min(...pointAt.slice(0, 3))).toBeLessThan(1e-9 /* mm */);
  });

  it('sets a wide table in smaller type, and refuses one too wide to read', () => {
    const wide = (columns: number): Table => ({
      columns: Array.from({ length: columns }, () => ({ name: 'long name', unit: 'm' })),
      rows: [Array.from({ length: columns }, () => 1)],
    });
    const sizeOf = (columns: number) =>
      withRole(
        layOutCard({ ...content, tables: [wide(columns)] }, 'a4')
          .pages.slice(0, 1)
          .flatMap(itemsOf),
        'text',
        'cell',
      )[0]?.size;
    expect(sizeOf(6)).toBe(3.1);
    expect(sizeOf(13)).toBeLessThan(2.5);
    expect(() => sizeOf(30)).toThrow(/width of a table.*leave columns out/);
  });

  it('takes the largest type that one page holds', () => {
    const sizes = [5, 34, 38, 60].map(
      (rows) =>
        withRole(
          layOutCard({ ...content, tables: [marks(rows), marks(10)] }, 'letter')
            .pages.slice(0, 1)
            .flatMap(itemsOf),
          'text',
          'cell',
        )[0]?.size ?? 0,
    );
    expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
    expect(sizes[0]).toBe(3.1);
    expect(sizes.at(-1)).toBeLessThan(3);
  });

  it('sets what matters first in bold, and its column wide enough for it', () => {
    const strong: Table = {
      columns: [
        { name: 'a', unit: '', digits: 2, strong: true },
        { name: 'b', unit: '', digits: 2 },
      ],
      rows: [
        [123456.78, 123456.78],
        [1, 2],
      ],
    };
    const items = layOutCard({ ...content, tables: [strong], plots: [] }, 'a4')
      .pages.slice(0, 1)
      .flatMap(itemsOf);
    const [first, second] = withRole(items, 'text', 'cell');
    expect([first?.weight, second?.weight]).toEqual(['bold', 'regular']);
    expect(overlaps(withRole(items, 'text', 'cell').map(inkBox))).toEqual([]);
  });

  it('says what it leads with under the title, and notes beside a table that leaves them room', () => {
    const items = layOutCard({ ...content, lead: ['The answer.'], tables: [marks(9)] }, 'a4')
      .pages.slice(0, 1)
      .flatMap(itemsOf);
    const [lead] = withRole(items, 'text', 'lead');
    const [note] = withRole(items, 'text', 'note');
    const cells = withRole(items, 'text', 'cell');
    expect(lead?.text).toBe('The answer.');
    expect(lead?.y).toBeLessThan(cells[0]?.y ?? 0);
    expect(note?.x).toBeGreaterThan(Math.max(...cells.map((cell) => inkBox(cell).right)));
    expect(note?.y).toBeLessThan(cells.at(-1)?.y ?? 0);
  });

  it('stands plots under one another where the page has room for it, else in pairs', () => {
    const rulesOf = (rows: number) =>
      withRole(
        layOutCard({ ...content, tables: [marks(rows)] }, 'a4')
          .pages.slice(0, 1)
          .flatMap(itemsOf),
        'text',
        'plot-title',
      ).map(({ x }) => x);
    expect(new Set(rulesOf(5)).size).toBe(1);
    expect(new Set(rulesOf(28)).size).toBe(2);
  });

  it('refuses a number that is not finite', () =>
    expect(() =>
      layOutCard(
        { ...content, tables: [{ columns: [{ name: 'x', unit: '' }], rows: [[Number.NaN]] }] },
        'a4',
      ),
    ).toThrow(DomainError));

  it('makes a page of nothing but a title', () =>
    expect(
      layOutCard({ title: 'Empty', subtitle: [], tables: [], plots: [], notes: [], cautions: [] }, 'a4')
        .pages,
    ).toHaveLength(1));
});
