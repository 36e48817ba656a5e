import { expect, it } from 'vitest';
import { layOutCard } from '../../src/documents/page/card.ts';
import type { Drawing } from '../../src/documents/page/drawing.ts';
import type { Plot } from '../../src/documents/plot/plot-data.ts';
import { plotText } from '../../src/documents/plot/terminal-plot.ts';
import { renderSvg } from '../../src/documents/render/svg.ts';
import { renderTableCsv, renderTableText } from '../../src/documents/render/text.ts';
import type { Table } from '../../src/documents/table/table.ts';
import { layOutTape } from '../../src/documents/tape/tape.ts';
import { inventedMark, inventedSetup, inventedTape } from '../unit/documents/invented-tape.ts';

// To accept a change: delete the file, run again, read the difference, say why in the commit.
const file = (name: string) => `files/${name}`;

const firstPage = (drawing: Drawing, title: string) =>
  drawing.pages
    .slice(0, 1)
    .map((page) => renderSvg(page, { title }))
    .join('');

const YARD = 0.9144;
const INCH = 0.0254;
const ranges = Array.from({ length: 9 }, (_, i) => 20 + 10 * i);
const drop = (range: number) => (9.80665 * range ** 2) / (2 * inventedSetup.speed ** 2);
const marks: Table = {
  title: 'Marks of an invented build',
  columns: [
    { name: 'range', unit: 'yd', digits: 0 },
    { name: 'mark', unit: 'mm', digits: 2 },
    { name: 'drop', unit: 'in', digits: 1 },
    { name: 'remark', unit: '' },
  ],
  rows: ranges.map((range) => [
    range,
    1000 * (inventedMark(range * YARD, inventedSetup) - inventedMark(20 * YARD, inventedSetup)),
    range === 90 ? null : drop(range * YARD) / INCH,
    range === 20 ? 'zero, shot' : null,
  ]),
  notes: ['In a vacuum: a parabola, and no arrow flies so well.'],
};
const path: Plot = {
  title: 'Path of an invented build',
  x: { label: 'range', unit: 'yd' },
  y: { label: 'height on the launch line', unit: 'in' },
  series: [
    {
      name: 'parabola',
      kind: 'line',
      points: Array.from({ length: 101 }, (_, i) => ({ x: i, y: -drop(i * YARD) / INCH })),
    },
    {
      name: 'shot',
      kind: 'points',
      points: [20, 40, 60].map((x) => ({
        x,
        y: -drop(x * YARD) / INCH + (x % 40 === 0 ? 4 : -3),
        error: x / 5,
      })),
    },
  ],
  markers: [{ axis: 'x', at: 20, label: 'zero range' }],
};

it('the tape is what it was', async () => {
  const svg = firstPage(layOutTape(inventedTape(5, 60), { paper: 'a4', copies: 1 }), 'An invented tape');
  await expect(svg).toMatchFileSnapshot(file('tape.svg'));
});

it('the card is what it was', async () => {
  const card = layOutCard(
    {
      title: 'An invented build',
      subtitle: ['452 gr at 281 ft/s'],
      tables: [marks],
      plots: [path],
      notes: ['Nobody shot this.'],
      cautions: ['Every distance needs a backstop.'],
    },
    'letter',
  );
  await expect(firstPage(card, 'An invented card')).toMatchFileSnapshot(file('card.svg'));
});

it('the table is what it was', async () => {
  await expect(renderTableText(marks)).toMatchFileSnapshot(file('table.txt'));
  await expect(renderTableCsv(marks)).toMatchFileSnapshot(file('table.csv'));
});

it('the plot for a terminal is what it was', async () => {
  await expect(plotText(path, { width: 72, height: 22 })).toMatchFileSnapshot(file('plot.txt'));
});
