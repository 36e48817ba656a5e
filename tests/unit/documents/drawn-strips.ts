import type { Item, TextItem } from '../../../src/documents/page/drawing.ts';
import { inkBox, isInside, overlap, withRole } from './ink-box.ts';
import type { Box } from './text-box.ts';

/** A strip as it is on the page: what its cut lines hold. */
export interface DrawnStrip extends Box {
  readonly texts: readonly TextItem[];
  /** Solid and hollow. */
  readonly ticks: readonly Item[];
  /** Height of the line right across at the zero range, mm on the page; NaN where there is none. */
  readonly zero: number;
  /** Where the tab begins. */
  readonly fold: number;
}

const isTick = ({ role }: Item): boolean => role === 'tick' || role === 'hollow-tick';

/** Height of the middle of an item, mm on the page. */
export const middleOf = (item: Item): number => {
  const { top, bottom } = inkBox(item);
  return (top + bottom) / 2;
};

/** The strips of a page by their upright cut lines, row by row. */
export function drawnStrips(items: readonly Item[]): readonly DrawnStrip[] {
  const uprights = withRole(items, 'line', 'cut').filter(({ from, to }) => from.x === to.x);
  return Array.from({ length: uprights.length / 2 }, (_, i) => {
    const [a, b] = [uprights[2 * i], uprights[2 * i + 1]];
    if (a === undefined || b === undefined) throw new Error('a strip without two sides');
    const box = { left: a.from.x, right: b.from.x, top: a.from.y, bottom: a.to.y };
    const touches = (item: Item) => overlap(widened(inkBox(item)), box);
    const folds = withRole(items, 'line', 'fold').filter(
      ({ from }) => from.x === box.left && isInBox(from.y, box),
    );
    return {
      ...box,
      texts: items.filter(
        (item): item is TextItem =>
          item.kind === 'text' &&
          ['label', 'lane', 'name', 'tab'].includes(item.role ?? '') &&
          item.text !== '' &&
          touches(item),
      ),
      ticks: items.filter((item) => isTick(item) && touches(item)),
      zero:
        items
          .filter(
            (item) => /^zero(-shot)?-line$/.test(item.role ?? '') && isInside(inkBox(item), widened(box)),
          )
          .map(middleOf)[0] ?? Number.NaN,
      fold: folds[0]?.from.y ?? Number.NaN,
    };
  });
}

const isInBox = (y: number, { top, bottom }: Box): boolean => y >= top && y <= bottom;

/** Ticks that start on a cut line touch it without sharing area. */
const widened = ({ left, right, top, bottom }: Box): Box => ({
  left: left - 0.01,
  right: right + 0.01,
  top: top - 0.01,
  bottom: bottom + 0.01,
});
