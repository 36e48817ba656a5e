import PDFDocument from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import { at } from '../../numerics/at.ts';
import { oncePerNumber } from '../../numerics/once.ts';
import {
  type Drawing,
  type Item,
  type LineItem,
  type PagePoint,
  palette,
  type RectItem,
  type TextItem,
  type Weight,
} from '../page/drawing.ts';
import { printableText, textInTypeface } from '../page/printable-text.ts';
import { textWidth } from '../page/text-measure.ts';

export interface PdfOptions {
  /** The font files' bytes (TrueType): the document carries the glyphs it uses, so it prints the same everywhere. */
  readonly font: Uint8Array;
  readonly boldFont?: Uint8Array;
  readonly title: string;
  /** An argument, so that the same drawing gives the same bytes. */
  readonly createdAt: Date;
  /** Called with the characters that the font lacks; a box is printed for each. */
  readonly onLacking?: (characters: readonly string[]) => void;
}

/** Points in a millimetre: 72 to the inch of 25.4 mm, both by definition. */
const POINTS_PER_MM = 72 / 25.4;
/** Decimals of a coordinate in mm, as in an SVG: a tick is within 5e-5 mm of its mark, and no engine's last bit shows. */
const DECIMALS = 4;
const PER_MM = 10 ** DECIMALS;
const points = (mm: number): number => (Math.round(mm * PER_MM) / PER_MM) * POINTS_PER_MM;

/** A place in the words of a PDF, rounded to a millionth of a point as pdfkit does. */
const place = ({ x, y }: PagePoint): string => `${operand(points(x))} ${operand(points(y))}`;
const operand = (value: number): number => Math.round(value * 1e6) / 1e6;

type Pen = PDFKit.PDFDocument;

/**
 * No font at the start, for which the published types have no word: a font that the constructor opens is found under no other
 * name later, and pdfkit would open it anew for every text.
 */
const NO_FONT = null as unknown as string;

/**
 * A drawing as a PDF that asks to be printed at actual size; the same input gives the same bytes.
 *
 * The fonts come as bytes because standard ones are looked up by module name, which a bundled program does not have.
 * Nothing is compressed: the bytes then depend on no zlib, and a tape is some tens of kilobytes.
 */
export async function renderPdf(drawing: Drawing, options: PdfOptions): Promise<Uint8Array> {
  const pen: Pen = new PDFDocument({
    autoFirstPage: false,
    compress: false,
    pdfVersion: '1.7',
    font: NO_FONT,
    info: {
      Title: printableText(options.title),
      Creator: 'quillpath',
      Producer: 'quillpath',
      CreationDate: options.createdAt,
    },
  });
  pen.registerFont('regular', options.font);
  pen.registerFont('bold', options.boldFont ?? options.font);
  askForActualSize(pen);
  const glyphs = {
    regular: oncePerNumber((codePoint) => hasGlyph(pen, codePoint)),
    bold: oncePerNumber((codePoint) => hasGlyph(pen, codePoint)),
  };
  const lacking = new Set<string>();
  for (const page of drawing.pages) {
    pen.addPage({ size: [points(page.width), points(page.height)], margin: 0 });
    for (const stretch of stretchesOf(page.items)) {
      if (stretch.kind === 'lines') drawLines(pen, stretch.lines);
      else for (const character of draw(pen, stretch.item, glyphs)) lacking.add(character);
    }
  }
  if (lacking.size > 0) options.onLacking?.([...lacking]);
  const bytes = toBytes(pen);
  pen.end();
  return bytes;
}

/** Viewers scale a page to the paper unless the document's catalogue says otherwise; pdfkit has no option for it. */
function askForActualSize(pen: Pen): void {
  const catalogue = (pen as unknown as { _root: { data: Record<string, unknown> } })._root.data;
  catalogue['ViewerPreferences'] = pen.ref({
    PrintScaling: 'None',
    Duplex: 'Simplex',
    PickTrayByPDFSize: true,
    DisplayDocTitle: true,
  });
}

/** Lines that follow one another in one colour, whose order nobody sees; or any other item. */
type Stretch =
  | { readonly kind: 'lines'; readonly lines: LineItem[] }
  | { readonly kind: 'one'; readonly item: Exclude<Item, LineItem> };

function stretchesOf(items: readonly Item[]): readonly Stretch[] {
  const stretches: Stretch[] = [];
  for (const item of items) {
    const last = stretches.at(-1);
    if (item.kind !== 'line') stretches.push({ kind: 'one', item });
    else if (last?.kind === 'lines' && last.lines[0]?.colour === item.colour) last.lines.push(item);
    else stretches.push({ kind: 'lines', lines: [item] });
  }
  return stretches;
}

/** Lines alike in one stroke each: a tape has over a thousand ticks. */
function drawLines(pen: Pen, lines: readonly LineItem[]): void {
  const alike = new Map<string, LineItem[]>();
  for (const line of lines) {
    const style = [line.stroke, ...(line.dash ?? [])].join(' ');
    const group = alike.get(style) ?? [];
    alike.set(style, group);
    group.push(line);
  }
  for (const group of alike.values()) {
    // At once, not piece by piece: pdfkit keeps every piece until the end.
    pen.addContent(group.map(({ from, to }) => `${place(from)} m\n${place(to)} l`).join('\n'));
    strokePath(pen, at(group, 0));
  }
}

/** Draw an item, and give the characters of it that the font lacks. */
function draw(
  pen: Pen,
  item: Exclude<Item, LineItem>,
  glyphs: Readonly<Record<Weight, HasGlyph>>,
): readonly string[] {
  switch (item.kind) {
    case 'polyline':
      trace(pen, item.points);
      if (item.closed === true) pen.closePath();
      if (item.fill === undefined) strokePath(pen, item);
      else
        pen.lineWidth(points(item.stroke)).undash().fillAndStroke(palette[item.fill], palette[item.colour]);
      break;
    case 'rect':
      drawRect(pen, item);
      break;
    case 'text':
      return drawText(pen, item, glyphs);
  }
  return [];
}

function trace(pen: Pen, path: readonly PagePoint[]): void {
  for (const [i, { x, y }] of path.entries()) {
    if (i === 0) pen.moveTo(points(x), points(y));
    else pen.lineTo(points(x), points(y));
  }
}

function strokePath(pen: Pen, style: Pick<LineItem, 'colour' | 'stroke' | 'dash'>): void {
  const [ink, gap] = style.dash ?? [];
  if (ink === undefined || gap === undefined) pen.undash();
  else pen.dash(points(ink), { space: points(gap) });
  pen.lineWidth(points(style.stroke)).stroke(palette[style.colour]);
}

function drawRect(pen: Pen, item: RectItem): void {
  const path = () => pen.rect(points(item.x), points(item.y), points(item.width), points(item.height));
  if (item.fill !== undefined) path().fill(palette[item.fill]);
  if (item.outline === undefined) return;
  path();
  strokePath(pen, item.outline);
}

/** Whether a font has a glyph for a code point; asked while the pen holds that font. */
type HasGlyph = (codePoint: number) => boolean;

/** pdfkit draws nothing for a character without a glyph; its published types do not know the font behind the pen. */
const hasGlyph = (pen: Pen, codePoint: number): boolean =>
  (pen as unknown as { _font: { font: { hasGlyphForCodePoint: HasGlyph } } })._font.font.hasGlyphForCodePoint(
    codePoint,
  );

function drawText(pen: Pen, item: TextItem, glyphs: Readonly<Record<Weight, HasGlyph>>): readonly string[] {
  const weight = item.weight ?? 'regular';
  const start = { start: 0, middle: 0.5, end: 1 }[item.anchor ?? 'start'];
  const x = points(item.x);
  const y = points(item.y);
  pen.font(weight).fontSize(points(item.size)).fillColor(palette[item.colour]);
  const { text, lacking } = textInTypeface(printableText(item.text), glyphs[weight]);
  const turned = item.rotation !== undefined && item.rotation !== 0;
  if (turned) pen.save().rotate(item.rotation, { origin: [x, y] });
  drawLine(pen, text, x - points(start * textWidth(text, item.size, weight)), y);
  if (turned) pen.restore();
  return lacking;
}

/**
 * One line of text from its baseline. pdfkit's `text` measures it twice more, for links, underlines and what follows on the line;
 * its own pen for a line, which the published types leave out, need not.
 */
function drawLine(pen: Pen, text: string, x: number, y: number): void {
  const { _fragment: fragment } = pen as unknown as {
    _fragment: (text: string, x: number, y: number, options: object) => void;
  };
  fragment.call(pen, text, x, y, { baseline: 'alphabetic', textWidth: 0, wordCount: 1 });
}
