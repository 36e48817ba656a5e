import { expect, it } from 'vitest';
import type { TextItem } from '../../../../src/documents/page/drawing.ts';
import { textWidth } from '../../../../src/documents/page/text-measure.ts';
import { renderPdf } from '../../../../src/documents/render/pdf.ts';
import { pdfOptions } from '../pdf-options.ts';
import { readPdf } from '../read-pdf.ts';

const options = await pdfOptions('Invented texts');

it('turns a text about its anchor, clockwise, each time that it stands on the page', async () => {
  const turned = (['start', 'middle', 'end'] as const).flatMap((anchor) =>
    [-90, 30, 90].map(
      (rotation, i): TextItem => ({
        kind: 'text',
        x: 30 + 10 * i,
        y: 40,
        text: 'camp',
        size: 4,
        colour: 'ink',
        anchor,
        rotation,
      }),
    ),
  );
  const { pages } = await readPdf(
    await renderPdf({ pages: [{ width: 100, height: 100, items: turned }] }, options),
  );
  const found = pages[0]?.turned ?? [];
  expect(found.map(({ text }) => text)).toEqual(turned.map(() => 'camp'));
  const worst = turned.map((item, i) => {
    const { x, y, width, rotation } = found[i] ?? { x: Number.NaN, y: 0, width: 0, rotation: 0 };
    const before = { start: 0, middle: 0.5, end: 1 }[item.anchor ?? 'start'] * width;
    const angle = ((item.rotation ?? 0) * Math.PI) / 180;
    return Math.max(
      Math.abs(x + before * Math.cos(angle) - item.x),
      Math.abs(y + before * Math.sin(angle) - item.y),
      Math.abs(rotation - (item.rotation ?? 0)),
    );
  });
  expect(Math.max(...worst)).toBeLessThan(1e-3 /* mm, and degrees; pdfjs hands over single precision */);
});

it('sets the same words on every page, in either weight and any size', async () => {
  const words = (['regular', 'bold'] as const).flatMap((weight) =>
    [3, 4].map(
      (size): TextItem => ({
        kind: 'text',
        x: 10,
        y: 10 * size,
        text: 'camp',
        size,
        colour: 'ink',
        weight,
      }),
    ),
  );
  const sheets = [50, 80].map((height) => ({ width: 50, height, items: words }));
  const { pages } = await readPdf(await renderPdf({ pages: sheets }, options));
  const [light = 0, heavy = 0] = (['regular', 'bold'] as const).map((weight) => textWidth('camp', 1, weight));
  for (const page of pages) {
    expect(page.texts.map(({ size }) => Math.round(size * 1000))).toEqual([3000, 4000, 3000, 4000]);
    expect(page.texts.map(({ y }) => Math.round(y * 1000))).toEqual([30_000, 40_000, 30_000, 40_000]);
    for (const [i, wanted] of [3 * light, 4 * light, 3 * heavy, 4 * heavy].entries())
      expect(Math.abs((page.texts[i]?.width ?? 0) - wanted)).toBeLessThan(
        0.01 /* mm: widths in a PDF are rounded */,
      );
  }
});
