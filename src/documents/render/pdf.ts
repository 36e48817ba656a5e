import PDFDocument from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import {
  type Drawing,
  type Item,
  type LineItem,
  type PagePoint,
  palette,
  type RectItem,
  type TextItem,
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

type Pen = PDFKit.PDFDocument;

/** pdfkit opens a font from its bytes; the published types of the constructor know only a name. */
const asFontName = (bytes: Uint8Array) => bytes as unknown as string;

/** The layout measures without kerning, so none is drawn; the published types know only the list that switches on. */
const noKerning = { kern: false } as unknown as PDFKit.Mixins.OpenTypeFeatures[];

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
    font: asFontName(options.font),
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
  const lacking = new Set<string>();
  for (const page of drawing.pages) {
    pen.addPage({ size: [page.width * POINTS_PER_MM, page.height * POINTS_PER_MM], margin: 0 });
    for (const item of page.items) for (const character of draw(pen, item)) lacking.add(character);
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

/** Draw an item, and give the characters of it that the font lacks. */
function draw(pen: Pen, item: Item): readonly string[] {
  switch (item.kind) {
    case 'line':
      trace(pen, [item.from, item.to]);
      strokePath(pen, item);
      break;
    case 'polyline':
      trace(pen, item.points);
      if (item.closed === true) pen.closePath();
      if (item.fill === undefined) strokePath(pen, item);
      else
        pen
          .lineWidth(item.stroke * POINTS_PER_MM)
          .undash()
          .fillAndStroke(palette[item.fill], palette[item.colour]);
      break;
    case 'rect':
      drawRect(pen, item);
      break;
    case 'text':
      return drawText(pen, item);
  }
  return [];
}

function trace(pen: Pen, points: readonly PagePoint[]): void {
  for (const [i, { x, y }] of points.entries()) {
    if (i === 0) pen.moveTo(x * POINTS_PER_MM, y * POINTS_PER_MM);
    else pen.lineTo(x * POINTS_PER_MM, y * POINTS_PER_MM);
  }
}

function strokePath(pen: Pen, style: Pick<LineItem, 'colour' | 'stroke' | 'dash'>): void {
  const [ink, gap] = style.dash ?? [];
  if (ink === undefined || gap === undefined) pen.undash();
  else pen.dash(ink * POINTS_PER_MM, { space: gap * POINTS_PER_MM });
  pen.lineWidth(style.stroke * POINTS_PER_MM).stroke(palette[style.colour]);
}

function drawRect(pen: Pen, item: RectItem): void {
  const path = () =>
    pen.rect(
      item.x * POINTS_PER_MM,
      item.y * POINTS_PER_MM,
      item.width * POINTS_PER_MM,
      item.height * POINTS_PER_MM,
    );
  if (item.fill !== undefined) path().fill(palette[item.fill]);
  if (item.outline === undefined) return;
  path();
  strokePath(pen, item.outline);
}

/** pdfkit draws nothing for a character without a glyph; its published types do not know the font behind the pen. */
const hasGlyph = (pen: Pen, codePoint: number): boolean =>
  (
    pen as unknown as { _font: { font: { hasGlyphForCodePoint: (codePoint: number) => boolean } } }
  )._font.font.hasGlyphForCodePoint(codePoint);

function drawText(pen: Pen, item: TextItem): readonly string[] {
  const weight = item.weight ?? 'regular';
  const start = { start: 0, middle: 0.5, end: 1 }[item.anchor ?? 'start'];
  const x = item.x * POINTS_PER_MM;
  const y = item.y * POINTS_PER_MM;
  pen
    .font(weight)
    .fontSize(item.size * POINTS_PER_MM)
    .fillColor(palette[item.colour]);
  const { text, lacking } = textInTypeface(printableText(item.text), (codePoint) => hasGlyph(pen, codePoint));
  const turned = item.rotation !== undefined && item.rotation !== 0;
  if (turned) pen.save().rotate(item.rotation, { origin: [x, y] });
  pen.text(text, x - start * textWidth(text, item.size, weight) * POINTS_PER_MM, y, {
    lineBreak: false,
    baseline: 'alphabetic',
    features: noKerning,
  });
  if (turned) pen.restore();
  return lacking;
}
