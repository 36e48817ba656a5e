import PDFDocument from 'pdfkit';
import { toBytes } from 'pdfkit/output';
import { at } from '../../numerics/at.ts';
import { oncePer } from '../../numerics/once.ts';
import {
  type Drawing,
  type Item,
  type LineItem,
  type PageItem,
  type PagePoint,
  palette,
  type RectItem,
} from '../page/drawing.ts';
import { printableText } from '../page/printable-text.ts';
import { contentOf, operand, type Pen, points } from './pdf-content.ts';
import { type Compositor, compositor } from './pdf-text.ts';

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

/** A place in the words of a PDF. */
const place = ({ x, y }: PagePoint): string => `${operand(points(x))} ${operand(points(y))}`;

/**
 * No font at the start, for which the published types have no word: a font that the constructor opens is found under no other
 * name later, and pdfkit would open it anew for every text.
 */
const NO_FONT = null as unknown as string;

/** Node and every browser have it, though the language does not. */
const { TextEncoder } = globalThis as unknown as {
  TextEncoder: new () => { encode(text: string): Uint8Array };
};

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
  const lacking = new Set<string>();
  for (const page of drawing.pages) {
    pen.addPage({ size: [points(page.width), points(page.height)], margin: 0 });
    const content = contentOf(pen, () => drawAll(sheetOf(pen, lacking), page.items));
    // At once, not piece by piece: pdfkit keeps every piece until the end.
    pen.addContent(new TextEncoder().encode(content));
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

/** A page that is being drawn. */
interface Sheet {
  readonly pen: Pen;
  readonly set: Compositor;
  /** The name of what copies on it are of, which is written when it is first asked for. */
  readonly nameOf: (items: readonly Item[]) => string;
}

function sheetOf(pen: Pen, lacking: Set<string>): Sheet {
  const sheet: Sheet = {
    pen,
    set: compositor(pen, lacking),
    nameOf: oncePer((items: readonly Item[]) => form(sheet, items)),
  };
  return sheet;
}

/** pdfkit's pages list what they draw by name, as its images are; its published types do not know the list. */
interface NamedForms {
  readonly page: { readonly resources: object; readonly xobjects: Record<string, object> };
}

/** Items drawn once, to be put in several places of a page by the name that is given back. */
function form(sheet: Sheet, items: readonly Item[]): string {
  const { pen } = sheet;
  const content = contentOf(pen, () => drawAll(sheet, items));
  const { page } = pen as unknown as NamedForms;
  const { width, height } = pen.page;
  const written = pen.ref({
    Type: 'XObject',
    Subtype: 'Form',
    BBox: [-width, -height, width, height],
    Resources: page.resources,
  });
  written.end(new TextEncoder().encode(content));
  const name = `Copy${Object.keys(page.xobjects).length + 1}`;
  page.xobjects[name] = written;
  return name;
}

function drawAll(sheet: Sheet, items: readonly PageItem[]): void {
  for (const stretch of stretchesOf(items)) {
    if (stretch.kind === 'lines') drawLines(sheet.pen, stretch.lines);
    else draw(sheet, stretch.item);
  }
}

/** Lines that follow one another in one colour, whose order nobody sees; or any other item. */
type Stretch =
  | { readonly kind: 'lines'; readonly lines: LineItem[] }
  | { readonly kind: 'one'; readonly item: Exclude<PageItem, LineItem> };

function stretchesOf(items: readonly PageItem[]): readonly Stretch[] {
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
    pen.addContent(group.map(({ from, to }) => `${place(from)} m\n${place(to)} l`).join('\n'));
    strokePath(pen, at(group, 0));
  }
}

function draw(sheet: Sheet, item: Exclude<PageItem, LineItem>): void {
  const { pen, set, nameOf } = sheet;
  switch (item.kind) {
    case 'copy':
      pen.addContent(`q 1 0 0 1 ${place(item)} cm /${nameOf(item.of)} Do Q`);
      break;
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
      set(item);
  }
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
