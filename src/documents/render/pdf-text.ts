import { oncePerNumber } from '../../numerics/once.ts';
import { palette, type TextItem, type Weight } from '../page/drawing.ts';
import { printableText, textInTypeface } from '../page/printable-text.ts';
import { textWidth } from '../page/text-measure.ts';
import { contentOf, operand, type Pen, points } from './pdf-content.ts';

/** Sets a text on a page. */
export type Compositor = (item: TextItem) => void;

/** Whether a font has a glyph for a code point; asked while the pen holds that font. */
type HasGlyph = (codePoint: number) => boolean;

/**
 * One for each page, whose pen has a font registered for each weight. Most words of a sheet stand on several of its strips: their
 * glyphs are looked up once, as if they stood at its corner, and are then put in their places.
 *
 * @param lacking where the characters go that a font lacks
 */
export function compositor(pen: Pen, lacking: Set<string>): Compositor {
  const glyphs: Readonly<Record<Weight, HasGlyph>> = {
    regular: oncePerNumber((codePoint) => hasGlyph(pen, codePoint)),
    bold: oncePerNumber((codePoint) => hasGlyph(pen, codePoint)),
  };
  const onPage = new Map<string, string>();
  const atCorner = ({ text: written, size, weight = 'regular', anchor = 'start' }: TextItem): string => {
    pen.font(weight).fontSize(points(size));
    const { text, lacking: missing } = textInTypeface(printableText(written), glyphs[weight]);
    for (const character of missing) lacking.add(character);
    const before = { start: 0, middle: 0.5, end: 1 }[anchor] * textWidth(text, size, weight);
    return contentOf(pen, () => drawLine(pen, text, -points(before)));
  };
  return (item) => {
    const { text, size, weight = 'regular', anchor } = item;
    const key = `${weight} ${anchor} ${size} ${text}`;
    const line = onPage.get(key) ?? atCorner(item);
    onPage.set(key, line);
    pen.fillColor(palette[item.colour]);
    if (line !== '') pen.addContent(`q ${placing(item)} cm\n${line}\nQ`);
  };
}

/** The six numbers that turn and move what stands at the corner of the page to where an item stands. */
function placing({ x, y, rotation = 0 }: TextItem): string {
  const angle = (rotation * Math.PI) / 180;
  const [cos, sin] = [operand(Math.cos(angle)), operand(Math.sin(angle))];
  return [cos, sin, operand(-sin), cos, operand(points(x)), operand(points(y))].join(' ');
}

/** pdfkit draws nothing for a character without a glyph; its published types do not know the font behind the pen. */
const hasGlyph = (pen: Pen, codePoint: number): boolean =>
  (pen as unknown as { _font: { font: { hasGlyphForCodePoint: HasGlyph } } })._font.font.hasGlyphForCodePoint(
    codePoint,
  );

/**
 * One line of text from its baseline, at the top edge of the page. pdfkit's `text` measures it twice more, for links,
 * underlines and what follows on the line; its own pen for a line, which the published types leave out, need not.
 */
function drawLine(pen: Pen, text: string, x: number): void {
  const { _fragment: fragment } = pen as unknown as {
    _fragment: (text: string, x: number, y: number, options: object) => void;
  };
  fragment.call(pen, text, x, 0, { baseline: 'alphabetic', textWidth: 0, wordCount: 1 });
}
