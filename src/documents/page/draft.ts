import type { Drawing, Item } from './drawing.ts';

/** Where the word is to stand, mm. */
interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

const WORD = 'DRAFT';
/** The word is about this many ems long. */
const LENGTH = 3.6;
/** It runs up to the right at 45 degrees, as wide as this share of the box. */
const ANGLE = -45;
const SHARE = 0.85;
/** Tall enough for every part of a box to carry a word, so that none can be cut away. */
const TALLEST = 30;

/** The word DRAFT in light grey across a box, again and again from its top to its foot. */
export function draftOver({ x, y, width, height }: Box): readonly Item[] {
  const size = Math.min(TALLEST, (SHARE * width * Math.SQRT2) / LENGTH);
  const reach = (LENGTH * size) / Math.SQRT2;
  const count = Math.max(1, Math.floor(height / (1.2 * reach)));
  const step = height / count;
  return Array.from({ length: count }, (_, i): Item => {
    const middle = y + (i + 0.5) * step;
    return {
      kind: 'text',
      role: 'draft',
      // The middle of the letters, which stand about a third of an em above the baseline, comes to the middle of the box.
      x: x + width / 2 + (0.35 * size) / Math.SQRT2,
      y: middle + (0.35 * size) / Math.SQRT2,
      text: WORD,
      size,
      colour: 'mist',
      anchor: 'middle',
      weight: 'bold',
      rotation: ANGLE,
    };
  });
}

/** A document with the word across every page, under what is printed, so that nothing becomes illegible. */
export const asDraft = ({ pages }: Drawing): Drawing => ({
  pages: pages.map((page) => ({ ...page, items: [...draftOver({ x: 0, y: 0, ...page }), ...page.items] })),
});
