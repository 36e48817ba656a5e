import { describe, expect, it } from 'vitest';
import { type Drawing, itemsOf } from '../../../../src/documents/page/drawing.ts';
import { layOutTape, type TapePrint } from '../../../../src/documents/tape/tape.ts';
import type { TapeContent } from '../../../../src/documents/tape/tape-content.ts';
import { type DrawnStrip, drawnStrips } from '../drawn-strips.ts';
import { inkBox, overlap, withRole } from '../ink-box.ts';
import { inventedForm, inventedTape } from '../invented-tape.ts';

const print: TapePrint = { paper: 'a4', copies: 3 };
const items = (drawing: Drawing) => drawing.pages.flatMap(itemsOf);
const strips = (drawing: Drawing) => drawing.pages.flatMap((page) => drawnStrips(itemsOf(page)));
const textOn = (strip: DrawnStrip | undefined, ...roles: readonly string[]) =>
  (strip?.texts ?? []).filter(({ role }) => roles.includes(role ?? '')).map(({ text }) => text);
const inkOf = (tape: TapeContent) => items(layOutTape(tape, print));

describe('a strip, once it is cut out,', () => {
  const content = inventedTape();
  const drawing = layOutTape(content, print);
  const [slower, main] = strips(drawing);

  it('says along a wide strip, and on the tab of every strip, what it is', () => {
    expect(textOn(main, 'lane').join('')).toMatch(/^Inv.* · 452 gr · 1250 ft air · 2026-11-25 · yd$/);
    for (const strip of strips(drawing)) expect(textOn(strip, 'name', 'tab').join(' ')).toMatch(/^glue, /);
    for (const strip of strips(layOutTape({ ...content, form: { ...inventedForm, width: 6 } }, print))) {
      expect(textOn(strip, 'lane')).toEqual([]);
      expect(textOn(strip, 'name', 'tab').join(' ')).toContain('Invented camp, 452');
    }
  });

  it('says on a neighbour which way it goes', () => {
    expect(textOn(slower, 'lane').join('')).toMatch(/^−4 ft\/s: far/);
    expect(textOn(strips(drawing).at(-1), 'lane').join('')).toMatch(/^\+4 ft\/s: far/);
  });

  it('draws a line right across at the zero and at every shot range, but for numbers in its way', () => {
    const all = items(drawing);
    expect(withRole(all, 'line', 'zero-line')).toEqual([]);
    const lines = [...withRole(all, 'line', 'shot-line'), ...withRole(all, 'line', 'zero-shot-line')];
    const { left = Number.NaN, right = Number.NaN, zero = Number.NaN } = main ?? {};
    for (const { along } of content.mains.flatMap(({ shot }) => shot)) {
      const parts = lines.filter(
        ({ from }) =>
          Math.abs(from.y - zero - 1000 * along) < 1e-9 /* mm */ && from.x >= left && from.x <= right,
      );
      expect(Math.min(...parts.map(({ from }) => from.x))).toBe(left);
      expect(Math.max(...parts.map(({ to }) => to.x))).toBeCloseTo(right, 9);
    }
    const words = withRole(all, 'text', 'label').map(inkBox);
    expect(lines.filter((line) => words.some((word) => overlap(inkBox(line), word)))).toEqual([]);
  });

  it('draws the zero as a broken line where it was not shot', () => {
    const all = inkOf({ ...content, zero: { ...content.zero, shot: false } });
    expect(withRole(all, 'line', 'zero-shot-line')).toEqual([]);
    expect(withRole(all, 'line', 'zero-line').every(({ dash }) => dash !== undefined)).toBe(true);
    expect(withRole(all, 'polyline', 'zero')).toHaveLength(5);
  });

  it('points each sign at its mark, and shares one sign where the zero was shot', () => {
    expect(withRole(items(drawing), 'polyline', 'zero-shot')).toHaveLength(5);
    const tips = withRole(items(drawing), 'polyline', 'shot').map(({ points }) => points[0]?.y ?? 0);
    expect(tips).toHaveLength(3 * 2);
    for (const { along } of content.mains.flatMap(({ shot }) => shot.slice(1)))
      expect(
        tips.filter((y) => Math.abs(y - (main?.zero ?? Number.NaN) - 1000 * along) < 1e-9 /* mm */),
      ).toHaveLength(3);
  });
});
