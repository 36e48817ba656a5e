import { expect, it } from 'vitest';
import { asDraft, draftOver } from '../../../../src/documents/page/draft.ts';
import { itemsOf } from '../../../../src/documents/page/drawing.ts';
import { at } from '../../../../src/numerics/at.ts';

const words = (box: { x: number; y: number; width: number; height: number }) =>
  draftOver(box).flatMap((item) => (item.kind === 'text' ? [item] : []));

it('a long narrow strip says DRAFT from its top to its foot, so that no part of it can be cut away without', () => {
  const strip = { x: 10, y: 50, width: 12, height: 120 };
  const found = words(strip);
  expect(found.length).toBeGreaterThanOrEqual(8);
  for (const { text, x, y, size } of found) {
    expect(text).toBe('DRAFT');
    // Half a word of about 3.6 em, at 45 degrees, on each side of its middle.
    const reach = (3.6 * size) / 2 / Math.SQRT2;
    expect(Math.abs(x - 16) + reach).toBeLessThanOrEqual(6 + size /* mm: the height of a letter */);
    expect(y).toBeGreaterThan(50);
    expect(y).toBeLessThan(170 + size);
  }
  const gaps = found.slice(1).map(({ y }, i) => y - at(found, i).y);
  for (const gap of gaps)
    expect(gap).toBeLessThan(2 * strip.width /* mm: no clear piece longer than two widths */);
});

it('a page stays as it was, on top of the word', () => {
  const line = { kind: 'text', x: 1, y: 2, text: 'marks', size: 3, colour: 'ink' } as const;
  const { pages } = asDraft({ pages: [{ width: 210, height: 297, items: [line] }] });
  expect(pages[0]?.items.at(-1)).toEqual(line);
  expect(pages.flatMap(itemsOf).filter(({ role }) => role === 'draft').length).toBeGreaterThanOrEqual(2);
});
