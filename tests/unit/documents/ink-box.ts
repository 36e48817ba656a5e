import { type Item, itemsOf, type Page } from '../../../src/documents/page/drawing.ts';
import { type Box, textBox } from './text-box.ts';

/** No home printer reaches closer to the edge of the sheet than this, mm (common practice, no source). */
export const unprintableEdge = 5;

/** The upright rectangle that holds an item's ink, half its stroke included. */
export function inkBox(item: Item): Box {
  switch (item.kind) {
    case 'text':
      return textBox(item);
    case 'rect': {
      const half = (item.outline?.stroke ?? 0) / 2;
      return {
        left: item.x - half,
        top: item.y - half,
        right: item.x + item.width + half,
        bottom: item.y + item.height + half,
      };
    }
    case 'line': {
      // Ends are cut square: a line widens its box only across its own direction.
      const [dx, dy] = [item.to.x - item.from.x, item.to.y - item.from.y];
      const half = item.stroke / 2 / (Math.hypot(dx, dy) || 1);
      return around([item.from, item.to], Math.abs(dy) * half, Math.abs(dx) * half);
    }
    case 'polyline':
      return around(item.points, item.stroke / 2, item.stroke / 2);
  }
}

function around(
  points: readonly { readonly x: number; readonly y: number }[],
  padX: number,
  padY: number,
): Box {
  const xs = points.map(({ x }) => x);
  const ys = points.map(({ y }) => y);
  return {
    left: Math.min(...xs) - padX,
    right: Math.max(...xs) + padX,
    top: Math.min(...ys) - padY,
    bottom: Math.max(...ys) + padY,
  };
}

/** Shared area by more than a hair: rounding of sums is not an overlap. */
const HAIR = 1e-6; // mm

export const overlap = (a: Box, b: Box): boolean =>
  Math.min(a.right, b.right) - Math.max(a.left, b.left) > HAIR &&
  Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > HAIR;

/** Every pair of boxes that share area. */
export function overlaps<Named extends Box>(boxes: readonly Named[]): readonly (readonly [Named, Named])[] {
  return boxes.flatMap((a, i) => boxes.slice(i + 1).flatMap((b) => (overlap(a, b) ? [[a, b] as const] : [])));
}

export const isInside = (inner: Box, outer: Box): boolean =>
  inner.left >= outer.left - HAIR &&
  inner.right <= outer.right + HAIR &&
  inner.top >= outer.top - HAIR &&
  inner.bottom <= outer.bottom + HAIR;

/** Ink that reaches into the strip along the paper's edge that printers leave blank. */
export function inkOutside(page: Page, edge: number) {
  const printable = { left: edge, top: edge, right: page.width - edge, bottom: page.height - edge };
  return itemsOf(page).filter((item) => !isInside(inkBox(item), printable));
}

/** The items of a kind of mark on every page. */
export const withRole = <Kind extends Item['kind']>(
  items: readonly Item[],
  kind: Kind,
  role: string,
): readonly Extract<Item, { kind: Kind }>[] =>
  items.filter((item): item is Extract<Item, { kind: Kind }> => item.kind === kind && item.role === role);
