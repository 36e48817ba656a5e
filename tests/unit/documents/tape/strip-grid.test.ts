import { describe, expect, it } from 'vitest';
import { type Drawing, itemsOf } from '../../../../src/documents/page/drawing.ts';
import { layOutTape } from '../../../../src/documents/tape/tape.ts';
import { drawnStrips } from '../drawn-strips.ts';
import { inkBox, isInside, overlap, withRole } from '../ink-box.ts';
import { inventedSetup, inventedTape } from '../invented-tape.ts';

const strips = (drawing: Drawing) => drawing.pages.flatMap((page) => drawnStrips(itemsOf(page)));

describe('numbers from 10 to 120 touch nothing on a strip', () => {
  const ways = [
    ['left', 'bottom', 'upright', 'yd'],
    ['right', 'top', 'upright', 'm'],
    ['left', 'top', 'sideways', 'yd'],
    ['right', 'bottom', 'sideways', 'm'],
  ] as const;
  const grid = [5, 6.5, 8, 9, 10, 12, 20].flatMap((width) =>
    [0.4, 1, 2.5, 8].flatMap((ratio) =>
      ways.map(([ticks, farAt, numbers, unit]) => ({ width, ratio, ticks, farAt, numbers, unit })),
    ),
  );

  it.each(grid)(
    '$width mm wide, ratio $ratio, ticks $ticks, far at the $farAt, $numbers, in $unit',
    ({ width, ratio, ticks, farAt, numbers, unit }) => {
      const form = { width, length: null, ticks, farAt, numbers };
      const setup = { ...inventedSetup, reach: 0.84 * ratio };
      const drawn = layOutTape(inventedTape(10, 120, setup, { form, unit }), {
        paper: 'a4',
        copies: 1,
        join: true,
      });
      expect(strips(drawn).length).toBeGreaterThanOrEqual(3);
      for (const page of drawn.pages) {
        const texts = itemsOf(page).filter(({ kind }) => kind === 'text');
        const boxes = texts.map(inkBox);
        const touching = boxes.flatMap((a, i) =>
          boxes.slice(i + 1).flatMap((b, j) => (overlap(a, b) ? [[texts[i], texts[i + 1 + j]]] : [])),
        );
        expect(touching).toEqual([]);
        const labels = withRole(itemsOf(page), 'text', 'label').map(inkBox);
        const marks = itemsOf(page).filter(({ role = '' }) =>
          /-line$|tick$|^cut$|^shot$|^zero(-shot)?$/.test(role),
        );
        expect(marks.filter((mark) => labels.some((label) => overlap(label, inkBox(mark))))).toEqual([]);
      }
      for (const strip of strips(drawn))
        expect(strip.texts.filter((text) => !isInside(inkBox(text), strip))).toEqual([]);
    },
  );
});
