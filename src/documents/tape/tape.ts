import { DomainError } from '../../quantities/domain-error.ts';
import { draftOver } from '../page/draft.ts';
import { type Drawing, type Item, type Page, type PaperName, paperSizes } from '../page/drawing.ts';
import { pageNumber } from '../page/page-number.ts';
import { letteringFor } from './strip-style.ts';
import { stripWidth } from './strip-width.ts';
import { checkTapeContent, type TapeContent } from './tape-content.ts';
import { layOutSheet, type SheetFrame } from './tape-sheet.ts';
import { layOutStrip, type Strip } from './tape-strip.ts';
import { drawStrip, type PointerSide } from './tape-strip-drawing.ts';

export interface TapePrint {
  readonly paper: PaperName;
  /** How many times the main strip is printed. */
  readonly copies: number;
  /** Left unless stated. */
  readonly pointer?: PointerSide;
}

const BETWEEN_STRIPS = 5;
const BETWEEN_ROWS = 6;
const CAPTION_HEIGHT = 4.5;

interface Placed {
  readonly strip: Strip;
  /** Printed above the first strip of its kind in a row. */
  readonly caption: string;
}

/**
 * A tape as pages to print and cut out, at true scale: the main strip in copies, then the strips of nearby speeds.
 *
 * Strips stand in rows, as many to a row and a page as fit. A strip is never split: two halves stuck together would carry
 * the error of the scissors, so one too long for the sheet is refused.
 *
 * @throws DomainError when there is nothing to draw, a number is not finite, a strip is longer than the sheet allows, or so
 *   short that its ticks would merge
 */
export function layOutTape(content: TapeContent, print: TapePrint): Drawing {
  checkTapeContent(content);
  if (!(Number.isInteger(print.copies) && print.copies >= 1))
    throw new DomainError('copies of the tape', print.copies, 'whole numbers from 1');
  const size = paperSizes[print.paper];
  const sheet = layOutSheet(content, size);
  const lettering = letteringFor(content.ticks);
  const main = layOutStrip({ ...content, lettering }, content);
  const strips: readonly Placed[] = [
    ...Array.from({ length: print.copies }, () => ({ strip: main, caption: 'Tape' })),
    ...content.neighbours.map(({ name, ticks }) => ({
      strip: layOutStrip({ name, ticks, calibration: [], lettering }, content),
      caption: 'Nearby speeds',
    })),
  ];
  const width = stripWidth(strips.map(({ strip }) => strip));
  checkApart(content);
  for (const { strip } of strips) checkLength(strip, sheet, print.paper);
  const rows = inRows(strips, Math.floor((sheet.width + BETWEEN_STRIPS) / (width + BETWEEN_STRIPS)));
  const pages = inPages(rows, sheet).map((items) =>
    items.flatMap((row) => drawRow(row, { content, print, sheet, width })),
  );
  return {
    pages: pages.map(
      (items, i): Page => ({
        ...size,
        items: [...sheet.items, ...items, ...pageNumber(i, pages.length, size)],
      }),
    ),
  };
}

/**
 * More than a handful of ticks merge when they stand closer than this, mm; a tape this long is none the worse for a few
 * that do.
 */
const CROWDED = { ticks: 10, apart: 0.25, longEnough: 10 };

function checkApart({ ticks }: TapeContent): void {
  const along = ticks.map((tick) => 1000 * tick.along);
  const length = Math.max(...along) - Math.min(...along);
  const least = Math.min(CROWDED.longEnough, CROWDED.apart * (ticks.length - 1));
  if (ticks.length > CROWDED.ticks && length < least)
    throw new DomainError(
      'the length of the tape (mm)',
      Number(length.toPrecision(2)),
      `${least} or more, or its ${ticks.length} ticks would run together; check sight.tape.travel_ratio`,
    );
}

function checkLength(strip: Strip, sheet: SheetFrame, paper: PaperName): void {
  const room = sheet.bottom - sheet.top - CAPTION_HEIGHT;
  if (strip.height > room)
    throw new DomainError(
      'the length of the tape on paper (mm)',
      Math.ceil(strip.height),
      `at most ${Math.floor(room)} on one ${paper === 'a4' ? 'A4' : 'Letter'} sheet; end the tape at a shorter range`,
    );
}

function inRows(strips: readonly Placed[], perRow: number): readonly (readonly Placed[])[] {
  return Array.from({ length: Math.ceil(strips.length / perRow) }, (_, i) =>
    strips.slice(i * perRow, (i + 1) * perRow),
  );
}

interface PlacedRow {
  readonly top: number;
  readonly strips: readonly Placed[];
}

function inPages(rows: readonly (readonly Placed[])[], sheet: SheetFrame): readonly (readonly PlacedRow[])[] {
  const pages: PlacedRow[][] = [];
  let top = Number.POSITIVE_INFINITY;
  for (const strips of rows) {
    const height = CAPTION_HEIGHT + Math.max(...strips.map(({ strip }) => strip.height));
    if (top + height > sheet.bottom) {
      pages.push([]);
      top = sheet.top;
    }
    pages.at(-1)?.push({ top, strips });
    top += height + BETWEEN_ROWS;
  }
  return pages;
}

interface RowFrame {
  readonly content: TapeContent;
  readonly print: TapePrint;
  readonly sheet: SheetFrame;
  readonly width: number;
}

function drawRow(row: PlacedRow, { content, print, sheet, width }: RowFrame): readonly Item[] {
  return row.strips.flatMap(({ strip, caption }, i) => {
    const x = sheet.left + i * (width + BETWEEN_STRIPS);
    const y = row.top + CAPTION_HEIGHT;
    const above: Item = {
      kind: 'text',
      role: 'caption',
      x,
      y: y - 1.6,
      text: caption,
      size: 2.4,
      colour: 'slate',
    };
    const place = { x, y, width, unit: content.unit, pointer: print.pointer ?? 'left' };
    return [
      ...(row.strips[i - 1]?.caption === caption ? [] : [above]),
      ...(content.isDraft === true ? draftOver({ x, y, width, height: strip.height }) : []),
      ...drawStrip(strip, place),
    ];
  });
}
