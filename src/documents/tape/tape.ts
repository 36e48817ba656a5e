import { oncePer } from '../../numerics/once.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Drawing, type Page, type PaperName, paperSizes } from '../page/drawing.ts';
import { pageNumber } from '../page/page-number.ts';
import { type SheetRule, sheetRule } from './sheet-rule.ts';
import { pieces } from './strip-joins.ts';
import { longestThatFits, TapeTooLong } from './strip-length.ts';
import { checkTapeContent, type TapeContent, type TapeSource, tapesOf } from './tape-content.ts';
import { ABOVE_STRIPS, drawRow, inPages, perRow } from './tape-rows.ts';
import { layOutSheet, type SheetFrame } from './tape-sheet.ts';
import { layOutStrip, type Strip } from './tape-strip.ts';
import { drawStrip, tabLength } from './tape-strip-drawing.ts';

export interface TapePrint {
  readonly paper: PaperName;
  /** How many times each of the main strips is printed; 0 fills the sheet with them. */
  readonly copies: number;
  /** Whether a tape longer than the sheet runs on to a second strip. */
  readonly join?: boolean;
}

/**
 * Tapes as pages to print and cut out, at true scale: nearby ones left and right, the main ones in copies between them.
 *
 * Strips stand in rows, as many to a row and a page as fit, their zero ranges on one line. A strip longer than the sheet is
 * refused, unless it may run on: two halves stuck together carry the error of the scissors.
 *
 * @throws DomainError when there is nothing to draw, a number is not finite, or a tape is so short that its ticks would merge;
 *   TapeTooLong when the sheet, or the place that it is cut for, cannot hold it
 */
export function layOutTape(content: TapeContent, print: TapePrint): Drawing {
  checkTapeContent(content);
  if (!(Number.isInteger(print.copies) && print.copies >= 0))
    throw new DomainError('copies of the tape', print.copies, 'whole numbers from 0');
  for (const tape of content.mains) checkApart(tape);
  const size = paperSizes[print.paper];
  const sheet = layOutSheet(content, size);
  const rule = sheetRule(tapesOf(content), content.form);
  const strips = (tapes: readonly TapeSource[]) =>
    tapes.map((tape) => stripsOf(tape, { content, rule, sheet, print }));
  const groups = {
    before: strips(content.before),
    mains: strips(content.mains),
    after: strips(content.after),
  };
  const drawn = oncePer((strip: Strip) => drawStrip(strip, rule));
  const pages = filled(groups, print.copies, (rows) => inPages(rows, sheet, rule), perRow(sheet, rule));
  return {
    pages: pages.map(
      (rows, i): Page => ({
        ...size,
        items: [
          ...sheet.items,
          ...rows.flatMap((row) =>
            drawRow(row, { left: sheet.left, rule, isDraft: content.isDraft === true, drawn }),
          ),
          ...pageNumber(i, pages.length, size),
        ],
      }),
    ),
  };
}

/**
 * More than a handful of ticks merge when they stand closer than this, mm; a tape this long is none the worse for a few
 * that do.
 */
const CROWDED = { ticks: 10, apart: 0.25, longEnough: 10 };

function checkApart({ ticks }: TapeSource): void {
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

interface Frame {
  readonly content: TapeContent;
  readonly rule: SheetRule;
  readonly sheet: SheetFrame;
  readonly print: TapePrint;
}

/** The strips of one tape: one, or the pieces it runs on to. @throws TapeTooLong */
function stripsOf(tape: TapeSource, { content, rule, sheet, print }: Frame): readonly Strip[] {
  const strip = layOutStrip(tape, rule, content);
  const { form } = content;
  const tooLong = (room: number) => {
    const tapes = tapesOf(content);
    return new TapeTooLong(strip.height, room, longestThatFits(tapes, form, room));
  };
  if (form.length !== null && strip.height > form.length + ROUNDING) throw tooLong(form.length);
  const room = sheet.bottom - sheet.top - ABOVE_STRIPS - tabLength(rule);
  if (strip.height <= room) return [strip];
  const joined = print.join === true ? pieces(strip, room, rule) : null;
  if (joined === null) throw tooLong(room);
  return joined;
}

/** What sums of doubles leave of a strip as long as its place, mm. */
const ROUNDING = 1e-6;

/** The strips of each tape of a group. */
type Group = readonly (readonly Strip[])[];
interface Groups {
  readonly before: Group;
  readonly mains: Group;
  readonly after: Group;
}

/** Enough to spoil some. */
const USUAL_COPIES = 3;

/** Pages with the copies asked for, or with as many as the sheets hold that are needed anyway. */
function filled<Page>(
  groups: Groups,
  copies: number,
  paged: (rows: readonly (readonly Strip[])[]) => readonly Page[],
  most: number,
): readonly Page[] {
  const first = groups.mains.length === 1 ? USUAL_COPIES : 1;
  if (copies > 0) return paged(inRows(groups, copies, most));
  let pages = paged(inRows(groups, first, most));
  for (let more = first + 1; ; more += 1) {
    const next = paged(inRows(groups, more, most));
    if (next.length > pages.length) return pages;
    pages = next;
  }
}

/** Rows with the nearby strips at both ends of the first and the main ones between; the rest of the main ones below. */
function inRows(
  { before, mains, after }: Groups,
  copies: number,
  most: number,
): readonly (readonly Strip[])[] {
  const printed = mains.flatMap((strips) => Array.from({ length: copies }, () => strips).flat());
  const nearby = [...before.flat(), ...after.flat()];
  const between = Math.max(0, most - nearby.length);
  const whole = [...before, ...mains, ...after].every((strips) => strips.length === 1);
  const inOrder = whole
    ? [...before.flat(), ...printed.slice(0, between), ...after.flat(), ...printed.slice(between)]
    : [...before.flat(), ...printed, ...after.flat()];
  return Array.from({ length: Math.ceil(inOrder.length / most) }, (_, i) =>
    inOrder.slice(i * most, (i + 1) * most),
  );
}
