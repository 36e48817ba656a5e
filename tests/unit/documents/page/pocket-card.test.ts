import { describe, expect, it } from 'vitest';
import { itemsOf } from '../../../../src/documents/page/drawing.ts';
import {
  layOutPocket,
  POCKET,
  type PocketFace,
  pocketRoom,
} from '../../../../src/documents/page/pocket-card.ts';
import { capHeight } from '../../../../src/documents/page/text-measure.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { inkBox, inkOutside, isInside, overlaps, unprintableEdge, withRole } from '../ink-box.ts';

const face = (rows: number, columns: number): PocketFace => ({
  title: 'Invented camp, 452 grain build with a title that goes on and on and on until it is too long',
  heads: ['yd', ...Array.from({ length: columns - 1 }, (_, i) => `up ${10 * i}°`)],
  rows: Array.from({ length: rows }, (_, i) => [
    String(20 + 5 * i),
    ...Array.from({ length: columns - 1 }, (__, j) => (i + j / 10).toFixed(1)),
  ]),
  foot: 'Wind 10 mph from the side; up and down: take this off the range, 452 gr, 281 ft/s, 2026-11-25',
});

describe.each(['a4', 'letter'] as const)('cards for a pocket on %s', (paper) => {
  const front = face(17, 2);
  const back = face(9, 6);
  const [page] = layOutPocket(front, back, paper).pages;
  const items = page === undefined ? [] : itemsOf(page);
  const folds = withRole(items, 'line', 'fold');

  it('stand several on a sheet, inside what a printer reaches', () => {
    expect(folds.length).toBe(4);
    if (page !== undefined) expect(inkOutside(page, unprintableEdge)).toEqual([]);
  });

  it('are of the size ID-1 on either side of the fold', () => {
    const sides = withRole(items, 'line', 'cut').filter(({ from, to }) => from.x === to.x);
    for (const { from, to } of folds) {
      const own = sides.filter((side) => Math.abs(side.from.y - from.y) < 1e-9 /* mm */);
      const distances = own.map((side) => Math.abs(side.from.x - from.x));
      expect(distances).toHaveLength(2);
      for (const distance of distances) expect(Math.abs(distance - 85.6)).toBeLessThan(1e-9 /* mm */);
      expect(Math.abs(to.y - from.y - 54)).toBeLessThan(1e-9 /* mm */);
    }
  });

  it('have digits 3 mm high, no text over another, and all of it on one side or the other', () => {
    const texts = items.filter(({ role }) => role?.startsWith('card-') === true);
    expect(overlaps(texts.map(inkBox))).toEqual([]);
    for (const number of withRole(items, 'text', 'card-number'))
      expect(capHeight * number.size).toBeCloseTo(3, 9);
    const boxes = folds.flatMap(({ from }) => [
      { left: from.x - POCKET.width, right: from.x, top: from.y, bottom: from.y + POCKET.height },
      { left: from.x, right: from.x + POCKET.width, top: from.y, bottom: from.y + POCKET.height },
    ]);
    expect(texts.filter((text) => !boxes.some((box) => isInside(inkBox(text), box)))).toEqual([]);
  });

  it('refuse more rows than a side holds', () => {
    const room = pocketRoom(front);
    expect(room).toBeGreaterThan(17);
    expect(() => layOutPocket(face(room + 1, 2), back, paper)).toThrow(DomainError);
  });
});
