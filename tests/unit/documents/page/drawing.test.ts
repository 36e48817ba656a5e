import { describe, expect, it } from 'vitest';
import { type Item, moved, palette, paperSizes } from '../../../../src/documents/page/drawing.ts';

/** Relative luminance of an sRGB colour, 0 to 1. @source IEC 61966-2-1:1999 (from memory), weights of ITU-R BT.709 */
function luminance(hex: string): number {
  const [red = 0, green = 0, blue = 0] = [1, 3, 5].map((at) => {
    const c = Number.parseInt(hex.slice(at, at + 2), 16) / 255;
    return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

describe('palette', () => {
  it('keeps every colour apart from every other in black and white, by 0.02 in luminance', () => {
    const levels = Object.values(palette)
      .map(luminance)
      .toSorted((a, b) => a - b);
    const gaps = levels.slice(1).map((level, i) => level - (levels[i] ?? level));
    expect(Math.min(...gaps)).toBeGreaterThan(0.02);
  });

  it('writes in colours that stand out from paper at least 4 to 1', () => {
    const contrasts = (['ink', 'slate', 'lake', 'clay'] as const).map(
      (name) => 1.05 / (luminance(palette[name]) + 0.05),
    );
    expect(Math.min(...contrasts)).toBeGreaterThan(4);
  });
});

describe('paperSizes', () => {
  it('gives A4 the side ratio of the A series, √2 to the rounding to 1 mm', () =>
    expect(Math.abs(paperSizes.a4.width * Math.SQRT2 - paperSizes.a4.height)).toBeLessThan(0.5 /* mm */));

  it('gives Letter 8.5 in by 11 in, to the rounding of a double', () => {
    expect(Math.abs(paperSizes.letter.width - 8.5 * 25.4)).toBeLessThan(1e-12 /* mm */);
    expect(Math.abs(paperSizes.letter.height - 11 * 25.4)).toBeLessThan(1e-12 /* mm */);
  });
});

describe('moved', () => {
  const items: readonly Item[] = [
    { kind: 'line', from: { x: 0, y: 1 }, to: { x: 2, y: 3 }, colour: 'ink', stroke: 0.1 },
    { kind: 'polyline', points: [{ x: 0, y: 1 }], colour: 'ink', stroke: 0.1 },
    { kind: 'rect', x: 0, y: 1, width: 5, height: 6, fill: 'fog' },
    { kind: 'text', x: 0, y: 1, text: 'a', size: 2, colour: 'ink' },
  ];

  it('shifts every point of every kind of item and nothing else', () =>
    expect(items.map((item) => moved(item, 10, 20))).toEqual([
      { kind: 'line', from: { x: 10, y: 21 }, to: { x: 12, y: 23 }, colour: 'ink', stroke: 0.1 },
      { kind: 'polyline', points: [{ x: 10, y: 21 }], colour: 'ink', stroke: 0.1 },
      { kind: 'rect', x: 10, y: 21, width: 5, height: 6, fill: 'fog' },
      { kind: 'text', x: 10, y: 21, text: 'a', size: 2, colour: 'ink' },
    ]));
});
