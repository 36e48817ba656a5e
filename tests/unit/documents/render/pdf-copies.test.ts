import { expect, it } from 'vitest';
import { type Copy, type Item, itemsOf, type Page } from '../../../../src/documents/page/drawing.ts';
import { renderPdf } from '../../../../src/documents/render/pdf.ts';
import { renderSvg } from '../../../../src/documents/render/svg.ts';
import { layOutTape } from '../../../../src/documents/tape/tape.ts';
import { inventedTape } from '../invented-tape.ts';
import { pdfOptions } from '../pdf-options.ts';
import { readPdf } from '../read-pdf.ts';

const options = await pdfOptions('Invented copies');

const strip: readonly Item[] = [
  { kind: 'line', from: { x: 0, y: 0 }, to: { x: 5, y: 0 }, colour: 'ink', stroke: 0.2 },
  { kind: 'text', x: 1, y: 2, text: 'camp', size: 2, colour: 'ink' },
  { kind: 'text', x: 1, y: 5, text: 'tree', size: 2, colour: 'ink', weight: 'bold' },
];
const copies = (places: readonly (readonly [number, number])[]): readonly Copy[] =>
  places.map(([x, y]) => ({ kind: 'copy', x, y, of: strip }));
const pages: readonly Page[] = [
  {
    width: 60,
    height: 50,
    items: copies([
      [10, 10],
      [30, 10],
      [10, 30],
    ]),
  },
  { width: 40, height: 70, items: [...copies([[5, 50]]), ...strip] },
];

it('copies stand in their places on every page, and what they are of is written once a page', async () => {
  const bytes = await renderPdf({ pages }, options);
  const read = await readPdf(bytes);
  for (const [i, page] of pages.entries()) {
    const items = itemsOf(page);
    const { lines = [], texts = [] } = read.pages[i] ?? {};
    const places = (found: readonly { x: number; y: number }[]) =>
      found.map(({ x, y }) => [Math.round(1000 * x), Math.round(1000 * y)]); // µm
    expect(places(lines.map(({ x1, y1 }) => ({ x: x1, y: y1 })))).toEqual(
      places(items.flatMap((item) => (item.kind === 'line' ? [item.from] : []))),
    );
    expect(places(texts)).toEqual(places(items.flatMap((item) => (item.kind === 'text' ? [item] : []))));
    expect(texts.map(({ text }) => text)).toEqual(
      items.flatMap((item) => (item.kind === 'text' ? [item.text] : [])),
    );
  }
  const forms =
    Buffer.from(bytes)
      .toString('latin1')
      .match(/\/Subtype \/Form\b/g) ?? [];
  expect(forms).toHaveLength(pages.length);
});

it('an SVG has copies as what they are of, in their places', () => {
  const [page] = pages;
  if (page === undefined) throw new Error('no page');
  const written = { title: 'copies' };
  expect(renderSvg(page, written)).toBe(renderSvg({ ...page, items: itemsOf(page) }, written));
});

it('twelve copies of a tape take hardly more of a file than two', async () => {
  const size = async (count: number): Promise<number> =>
    (await renderPdf(layOutTape(inventedTape(20, 100), { paper: 'a4', copies: count }), options)).length;
  expect((await size(12)) - (await size(2))).toBeLessThan(6000 /* bytes: ten places and their headings */);
});
