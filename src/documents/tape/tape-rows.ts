import { draftOver } from '../page/draft.ts';
import type { Item, PageItem } from '../page/drawing.ts';
import { shortenedText, wrapText } from '../page/wrap-text.ts';
import type { SheetRule } from './sheet-rule.ts';
import type { SheetFrame } from './tape-sheet.ts';
import type { Strip } from './tape-strip.ts';
import { tabLength } from './tape-strip-drawing.ts';

const BETWEEN_STRIPS = 5;
const BETWEEN_ROWS = 4;
const CAPTION = { size: 2.1, line: 2.9, lines: 2 };
const HEADING = { size: 1.8, line: 2.6 };
/** Over every row: what its strips are for, and the name of each; mm. */
export const ABOVE_STRIPS = CAPTION.lines * CAPTION.line + HEADING.line;

interface Row {
  readonly top: number;
  readonly strips: readonly Strip[];
}

export const perRow = ({ width }: Pick<SheetFrame, 'width'>, { form }: SheetRule): number =>
  Math.floor((width + BETWEEN_STRIPS) / (form.width + BETWEEN_STRIPS));

/** Rows of strips down as many sheets as they need. */
export function inPages(
  rows: readonly (readonly Strip[])[],
  sheet: Pick<SheetFrame, 'top' | 'bottom'>,
  rule: SheetRule,
): readonly (readonly Row[])[] {
  const pages: Row[][] = [];
  let top = Number.POSITIVE_INFINITY;
  for (const strips of rows) {
    const height = ABOVE_STRIPS + heightOf(strips) + tabLength(rule);
    if (top + height > sheet.bottom) {
      pages.push([]);
      top = sheet.top;
    }
    pages.at(-1)?.push({ top, strips });
    top += height + BETWEEN_ROWS;
  }
  return pages;
}

/** Without the tabs, whose foot follows each strip. */
const heightOf = (strips: readonly Strip[]): number =>
  strips.map((strip) => lowered(strip, strips) + strip.height).reduce((a, b) => Math.max(a, b), 0);

/** How far below the head of a row a strip begins, so that the zero ranges of all its strips stand on one line. */
function lowered({ zero }: Strip, strips: readonly Strip[]): number {
  const zeros = strips.map((strip) => strip.zero);
  if (zero === null || zeros.includes(null)) return 0;
  return zeros.reduce<number>((a, b) => Math.max(a, b ?? a), zero) - zero;
}

interface RowFrame {
  readonly left: number;
  readonly rule: SheetRule;
  readonly isDraft: boolean;
  /** A strip as it would stand at the corner of the sheet, drawn once for all its copies. */
  readonly drawn: (strip: Strip) => readonly Item[];
}

/** One row with its captions. */
export function drawRow({ top, strips }: Row, { left, rule, isDraft, drawn }: RowFrame): readonly PageItem[] {
  const { width } = rule.form;
  const xOf = (i: number) => left + i * (width + BETWEEN_STRIPS);
  const captions = runsOf(strips).flatMap(({ caption, first, count }) =>
    captionItems(caption, {
      x: xOf(first),
      top,
      width: count * (width + BETWEEN_STRIPS) - 1,
    }),
  );
  return [
    ...captions,
    ...strips.flatMap((strip, i) => {
      const heading: Item = {
        kind: 'text',
        role: 'heading',
        x: xOf(i),
        y: top + ABOVE_STRIPS - 0.8,
        text: shortenedText(strip.name, {
          width: width + BETWEEN_STRIPS - 1,
          size: HEADING.size,
          weight: 'bold',
        }),
        size: HEADING.size,
        weight: 'bold',
        colour: 'ink',
      };
      const [x, y] = [xOf(i), top + ABOVE_STRIPS + lowered(strip, strips)];
      const paper = { x, y, width, height: strip.height + tabLength(rule) };
      const copy: PageItem = { kind: 'copy', x, y, of: drawn(strip) };
      return [heading, ...(isDraft ? draftOver(paper) : []), copy];
    }),
  ];
}

function captionItems(
  caption: string,
  { x, top, width }: { readonly x: number; readonly top: number; readonly width: number },
): readonly Item[] {
  const space = { width, size: CAPTION.size };
  const lines = wrapText(caption, space);
  const kept =
    lines.length <= CAPTION.lines
      ? lines
      : [
          ...lines.slice(0, CAPTION.lines - 1),
          shortenedText(lines.slice(CAPTION.lines - 1).join(' '), space),
        ];
  return kept.map((text, i) => ({
    kind: 'text',
    role: 'caption',
    x,
    y: top + (CAPTION.lines - kept.length + i + 1) * CAPTION.line - 0.8,
    text,
    size: CAPTION.size,
    colour: 'slate',
  }));
}

/** Strips beside one another with one caption. */
function runsOf(strips: readonly Strip[]) {
  const runs: { caption: string; first: number; count: number }[] = [];
  for (const [i, { caption }] of strips.entries()) {
    const last = runs.at(-1);
    if (last?.caption === caption) last.count += 1;
    else runs.push({ caption, first: i, count: 1 });
  }
  return runs;
}
