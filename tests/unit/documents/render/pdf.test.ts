import { beforeAll, describe, expect, it } from 'vitest';
import {
  type Drawing,
  type Item,
  itemsOf,
  paperSizes,
  type TextItem,
} from '../../../../src/documents/page/drawing.ts';
import { renderPdf } from '../../../../src/documents/render/pdf.ts';
import { layOutTape } from '../../../../src/documents/tape/tape.ts';
import { drawnStrips } from '../drawn-strips.ts';
import { overlaps } from '../ink-box.ts';
import { inventedSetup, inventedTape } from '../invented-tape.ts';
import { pdfOptions } from '../pdf-options.ts';
import { type ReadPdf, readPdf } from '../read-pdf.ts';

const options = await pdfOptions('Invented tape');

describe.each(['a4', 'letter'] as const)('a tape on %s, read back from its PDF', (paper) => {
  const content = inventedTape(3, 100);
  const drawing = layOutTape(content, { paper, copies: 3 });
  const drawn = drawing.pages.flatMap(itemsOf);
  let read: ReadPdf;
  beforeAll(async () => {
    read = await readPdf(await renderPdf(drawing, options));
  });

  it('asks to be printed at actual size', () => expect(read.printScaling).toBe('None'));

  it('carries its title', () => expect(read.title).toBe('Invented tape'));

  it('has the sheet size, to 1 µm', () => {
    expect(read.pages).toHaveLength(1);
    expect(Math.abs((read.pages[0]?.width ?? 0) - paperSizes[paper].width)).toBeLessThan(1e-3 /* mm */);
    expect(Math.abs((read.pages[0]?.height ?? 0) - paperSizes[paper].height)).toBeLessThan(1e-3 /* mm */);
  });

  it('draws each of its lines once and where the drawing has it, to 1 µm', () => {
    const wanted = drawn.filter((item) => item.kind === 'line');
    const left = [...(read.pages[0]?.lines ?? [])];
    expect(left).toHaveLength(wanted.length);
    // Lines alike are drawn together, so that their order is not that of the drawing.
    const worst = wanted.map(({ from, to, stroke }) => {
      const off = left.map((line) =>
        Math.max(
          Math.abs(line.x1 - from.x),
          Math.abs(line.y1 - from.y),
          Math.abs(line.x2 - to.x),
          Math.abs(line.y2 - to.y),
          Math.abs(line.stroke - stroke),
        ),
      );
      const least = Math.min(...off);
      left.splice(off.indexOf(least), 1);
      return least;
    });
    expect(Math.max(...worst)).toBeLessThan(1e-3 /* mm */);
  });

  it.each([
    ['100 mm', 100],
    ['4 in', 101.6],
  ])('has a check bar of %s, to 1 µm', (_, length) => {
    const uprights = (read.pages[0]?.lines ?? []).filter(
      ({ x1, x2, y1, y2, stroke }) =>
        x1 === x2 && Math.abs(stroke - 0.3) < 1e-4 && Math.abs(Math.abs(y2 - y1) - length) < 1e-3 /* mm */,
    );
    expect(uprights).toHaveLength(1);
  });

  it('has its texts where the drawing has them, to 1 µm', () => {
    const wanted = drawn.filter(
      (item): item is TextItem => item.kind === 'text' && item.rotation === undefined,
    );
    const found = read.pages[0]?.texts ?? [];
    expect(found.map(({ text }) => text)).toEqual(wanted.map(({ text }) => text));
    const worst = wanted.map((item, i) => {
      const start = { start: 0, middle: 0.5, end: 1 }[item.anchor ?? 'start'];
      const text = found[i];
      return Math.max(
        Math.abs((text?.y ?? Number.NaN) - item.y),
        Math.abs((text?.x ?? Number.NaN) + start * (text?.width ?? 0) - item.x),
      );
    });
    expect(Math.max(...worst)).toBeLessThan(1e-3 /* mm */);
  });

  it('has no text over another, by the widths of the embedded font', () => {
    const boxes = (read.pages[0]?.texts ?? []).map(({ text, x, y, width, size }) => ({
      text,
      left: x,
      right: x + width,
      top: y - 0.73 * size,
      bottom: y,
    }));
    expect(boxes.length).toBeGreaterThan(100);
    expect(overlaps(boxes)).toEqual([]);
  });
});

describe('true scale, read back from the PDF', () => {
  const forms = ([5, 9, 20] as const).flatMap((width) =>
    (['left', 'right'] as const).flatMap((ticks) =>
      (['bottom', 'top'] as const).flatMap((farAt) =>
        (['upright', 'sideways'] as const).map((numbers, i) => ({
          width,
          ticks,
          farAt,
          numbers,
          unit: i === 0 ? ('yd' as const) : ('m' as const),
          paper: width === 9 ? ('letter' as const) : ('a4' as const),
        })),
      ),
    ),
  );

  it.each(forms)(
    '$width mm wide, ticks $ticks, far at the $farAt, $numbers, in $unit on $paper: every tick within 0.02 mm',
    async ({ width, ticks, farAt, numbers, unit, paper }) => {
      const tape = inventedTape(20, 100, inventedSetup, {
        form: { width, length: null, ticks, farAt, numbers },
        unit,
      });
      const drawing = layOutTape(tape, { paper, copies: 1 });
      const { pages } = await readPdf(await renderPdf(drawing, options));
      const [page] = pages;
      const [before, main] = drawnStrips(drawing.pages.slice(0, 1).flatMap(itemsOf));
      if (page === undefined || main === undefined || before === undefined) throw new Error('no strip');
      const edge = main[ticks];
      // The zero as the paper has it: the line right across, which starts on the same edge.
      const level = page.lines.filter(
        ({ x1, y1, y2 }) => Math.abs(x1 - edge) < 0.01 && Math.abs(y1 - y2) < 1e-4,
      );
      const zero = level.find(
        ({ stroke, y1 }) => Math.abs(stroke - 0.09) < 1e-3 && Math.abs(y1 - main.zero) < 0.5,
      )?.y1;
      const solid = level.filter(
        ({ stroke }) => Math.abs(stroke - 0.09) > 1e-3 && Math.abs(stroke - 0.1) > 1e-3,
      );
      const hollow = page.shapes.filter(
        ({ left, right }) => Math.min(Math.abs(left - edge), Math.abs(right - edge)) < 0.01,
      );
      const found = [
        ...solid.map(({ y1 }) => y1),
        ...hollow.map(({ top, bottom }) => (top + bottom) / 2),
      ].filter((y) => y >= main.top && y <= main.fold);
      const down = farAt === 'bottom' ? 1000 : -1000;
      const wanted = tape.mains.flatMap((source) =>
        source.ticks.map(({ along }) => (zero ?? Number.NaN) + down * along),
      );
      expect(found.length).toBeGreaterThan(60);
      expect(hollow.length).toBeGreaterThan(10);
      const errors = found.map((y) => Math.min(...wanted.map((mark) => Math.abs(mark - y))));
      expect(Math.max(...errors)).toBeLessThan(0.02 /* mm: as is promised of a printed tape */);
      expect(Math.max(...errors)).toBeLessThan(1e-3 /* mm; pdfjs hands over single precision */);
      // And none is missing where single ranges begin: from 30 on each of them is drawn.
      const beyond = tape.mains.flatMap((source) => source.ticks.filter(({ label }) => label >= 30));
      for (const { along } of beyond)
        expect(found.some((y) => Math.abs(y - (zero ?? Number.NaN) - down * along) < 1e-3 /* mm */)).toBe(
          true,
        );
    },
  );
});

describe('renderPdf', () => {
  const every: readonly Item[] = [
    {
      kind: 'line',
      from: { x: 10, y: 10 },
      to: { x: 60, y: 10 },
      colour: 'lake',
      stroke: 0.2,
      dash: [1, 0.5],
    },
    {
      kind: 'polyline',
      points: [
        { x: 10, y: 20 },
        { x: 20, y: 25 },
        { x: 30, y: 20 },
      ],
      colour: 'clay',
      stroke: 0.3,
    },
    {
      kind: 'polyline',
      points: [
        { x: 10, y: 30 },
        { x: 20, y: 35 },
        { x: 30, y: 30 },
      ],
      colour: 'ink',
      stroke: 0.3,
      closed: true,
      fill: 'mist',
    },
    {
      kind: 'rect',
      x: 10,
      y: 40,
      width: 20,
      height: 5,
      fill: 'fog',
      outline: { colour: 'ink', stroke: 0.2 },
    },
    {
      kind: 'text',
      x: 40,
      y: 60,
      text: 'Turned\n& "quoted" −½°',
      size: 4,
      colour: 'slate',
      anchor: 'middle',
      rotation: 90,
    },
    { kind: 'text', x: 40, y: 80, text: '', size: 4, colour: 'ink' },
  ];
  const drawing: Drawing = {
    pages: [
      { width: 100, height: 150, items: every },
      { width: 150, height: 100, items: [] },
    ],
  };

  it('gives the same bytes for the same drawing and date', async () => {
    const first = await renderPdf(drawing, options);
    await new Promise((wait) => setTimeout(wait, 1100));
    const second = await renderPdf(drawing, options);
    expect(Buffer.compare(first, second)).toBe(0);
  });

  it('gives pages of their own sizes', async () => {
    const { pages } = await readPdf(await renderPdf(drawing, options));
    expect(pages.map(({ width }) => Math.round(width * 1000))).toEqual([100_000, 150_000]);
  });

  it('does without a bold font', async () => {
    const { font, title, createdAt } = options;
    const bold: Item = { kind: 'text', x: 10, y: 10, text: 'bold', size: 4, colour: 'ink', weight: 'bold' };
    const { pages } = await readPdf(
      await renderPdf({ pages: [{ width: 50, height: 50, items: [bold] }] }, { font, title, createdAt }),
    );
    expect(pages[0]?.texts.map(({ text }) => text)).toEqual(['bold']);
  });

  it('embeds its fonts and names no other', async () => {
    const text = Buffer.from(await renderPdf(drawing, options)).toString('latin1');
    expect(text).toContain('/FontFile2');
    expect(text).not.toContain('Helvetica');
  });

  it.each([
    ['regular', 'bold'],
    ['bold', 'regular'],
  ] as const)(
    'opens each of its fonts once, however many texts there are: %s, then %s',
    async (...weights) => {
      const letters = [...'abcdefghijklmnopqrstuvwxyz'];
      const pages = weights.map((weight) => ({
        width: 100,
        height: 150,
        items: letters.map(
          (text, i): Item => ({ kind: 'text', x: 10, y: 10 + 5 * i, text, size: 4, colour: 'ink', weight }),
        ),
      }));
      const text = Buffer.from(await renderPdf({ pages }, options)).toString('latin1');
      // pdfkit numbers a font when it opens it, and a text is set in it by that number: /F1 11.338583 Tf.
      const used = [...text.matchAll(/\/F(\d+) [\d.]+ Tf/g)].map(([, number]) => Number(number));
      expect(used).toEqual([...letters.map(() => 1), ...letters.map(() => 2)]);
    },
  );
});
