import { readFileSync } from 'node:fs';
import PDFDocument from 'pdfkit';
import { describe, expect, it } from 'vitest';
import type { TextItem, Weight } from '../../../../src/documents/page/drawing.ts';
import { advances } from '../../../../src/documents/page/font-advances.ts';
import { textWidth } from '../../../../src/documents/page/text-measure.ts';
import { inkReach, textBox } from '../text-box.ts';

const FONTS: Readonly<Record<Weight, string>> = {
  regular: 'src/documents/fonts/sans-condensed.ttf',
  bold: 'src/documents/fonts/sans-condensed-bold.ttf',
};
const SIZE = 1000;

/** The width that the font file itself gives, kerning off as in the renderer. */
function realFont(weight: Weight) {
  const pen = new PDFDocument({ font: FONTS[weight] }).fontSize(SIZE);
  const features: object = { kern: false };
  return (text: string) => pen.widthOfString(text, { ...features, features: Object(features) });
}

describe.each(['regular', 'bold'] as const)('textWidth in %s', (weight) => {
  const real = realFont(weight);
  const characters = advances[weight].map(([, group]) => group).join('');

  it('knows each character once', () => expect(new Set(characters).size).toBe(Array.from(characters).length));

  it('knows every printable character of ASCII', () => {
    const ascii = Array.from({ length: 0x7f - 0x20 }, (_, i) => String.fromCharCode(0x20 + i));
    expect(ascii.filter((character) => !characters.includes(character))).toEqual([]);
  });

  it('gives every character the width the font file gives it, to the rounding of a double', () => {
    const wrong = Array.from(characters).filter(
      (character) => Math.abs(textWidth(character, SIZE, weight) - real(character)) > 1e-9 /* of 1000 */,
    );
    expect(wrong).toEqual([]);
  });

  it('gives whole lines the width the font file gives them', () => {
    for (const line of ['0123456789', 'Print at 100 %', '−4 ft/s, AVATAR To ±0.05', 'Übung: 12½ yd'])
      expect(Math.abs(textWidth(line, SIZE, weight) - real(line))).toBeLessThan(1e-6 /* of 1000 */);
  });

  it('takes an unknown character as an em', () => expect(textWidth('弓', 3, weight)).toBe(3));

  it('measures a file that exists', () => expect(readFileSync(FONTS[weight]).length).toBeGreaterThan(40_000));
});

describe('textBox', () => {
  const item: TextItem = { kind: 'text', x: 50, y: 40, text: '100', size: 2, colour: 'ink' };
  const width = textWidth('100', 2);
  const reach = inkReach('100');

  it('starts, centres and ends at its anchor', () => {
    expect(textBox(item).left).toBe(50);
    expect(textBox({ ...item, anchor: 'middle' }).left).toBeCloseTo(50 - width / 2, 12);
    expect(textBox({ ...item, anchor: 'end' }).left).toBeCloseTo(50 - width, 12);
  });

  it('stands on its baseline', () =>
    expect(textBox(item)).toMatchObject({ top: 40 - 2 * reach.above, bottom: 40 + 2 * reach.below }));

  it('runs downwards when turned by a quarter clockwise', () => {
    const box = textBox({ ...item, rotation: 90 });
    expect(box.top).toBeCloseTo(40, 12);
    expect(box.bottom).toBeCloseTo(40 + width, 12);
    expect(box.right).toBeCloseTo(50 + 2 * reach.above, 12);
  });
});

describe('inkReach', () => {
  it('grows from digits to letters to accented letters', () => {
    expect(inkReach('100').above).toBeLessThan(inkReach('(g)').above);
    expect(inkReach('(g)').above).toBeLessThan(inkReach('É').above);
    expect(inkReach('100').below).toBeLessThan(inkReach('g').below);
  });
});
