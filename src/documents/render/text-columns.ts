import { cellText, fractionOf, isNumeric, type Table } from '../table/table.ts';
import { foldText } from './fold-text.ts';

const COLUMN_GAP = '  ';

/** One column as text: name, unit, then a text for every row, all of one width. */
interface TextColumn {
  readonly lines: readonly string[];
  readonly width: number;
  readonly isMinor: boolean;
  readonly isWords: boolean;
}

/** How wide a table may be, and whether columns may be left out to get there. */
export interface TextRoom {
  /** Characters. */
  readonly width: number;
  readonly keepsAll: boolean;
}

/**
 * The lines of a table, each block of them no wider than the room: first minor columns are left out from the right, then the
 * table is split, the first column standing before every part.
 *
 * @throws DomainError for a number that is not finite
 */
export function tableBlocks(table: Table, { width, keepsAll }: TextRoom): readonly (readonly string[])[] {
  const columns = table.columns.map((_, i) => textColumn(table, i));
  const kept = keepsAll ? columns : withoutMinor(columns, width);
  const hasUnits = table.columns.some(({ unit }) => unit !== '');
  return split(kept, width).map((part) =>
    Array.from({ length: table.rows.length + 2 }, (_, i) => i)
      .filter((i) => i !== 1 || hasUnits)
      .flatMap((i) =>
        rowLines(
          part.map(({ lines }) => lines[i] ?? ''),
          width,
        ),
      ),
  );
}

/** One row, its last cell folded under itself where the row is too wide. */
function rowLines(cells: readonly string[], width: number): readonly string[] {
  const row = cells.join(COLUMN_GAP).trimEnd();
  if (length(row) <= width) return [row];
  const before = cells
    .slice(0, -1)
    .map((cell) => cell + COLUMN_GAP)
    .join('');
  const room = Math.max(width - length(before), LEAST_ROOM);
  return foldText((cells.at(-1) ?? '').trimEnd(), room)
    .split('\n')
    .map((line, i) => `${i === 0 ? before : ' '.repeat(length(before))}${line}`.trimEnd());
}
/** Words are not folded to less than this. */
const LEAST_ROOM = 12;

const totalWidth = (columns: readonly TextColumn[]): number =>
  columns.reduce((sum, { width }) => sum + width + COLUMN_GAP.length, -COLUMN_GAP.length);

function withoutMinor(columns: readonly TextColumn[], width: number): readonly TextColumn[] {
  let kept = columns;
  while (totalWidth(kept) > width) {
    const last = kept.findLastIndex(({ isMinor }) => isMinor);
    if (last < 0) return kept;
    kept = kept.filter((_, i) => i !== last);
  }
  return kept;
}

function split(columns: readonly TextColumn[], width: number): readonly (readonly TextColumn[])[] {
  const [first, ...others] = columns;
  if (first === undefined) return [columns];
  const parts: TextColumn[][] = [[first]];
  for (const column of others) {
    const part = parts.at(-1) ?? [];
    const room = width - totalWidth(part) - COLUMN_GAP.length;
    const folds = column === others.at(-1) && column.isWords && room >= FOLDED;
    if (part.length > 1 && column.width > room && !folds) parts.push([first, column]);
    else part.push(column);
  }
  return parts;
}

/** Words fold beside their row where they have at least this much room. */
const FOLDED = 24;

const length = (text: string) => Array.from(text).length;
const padStart = (text: string, width: number) => ' '.repeat(Math.max(0, width - length(text))) + text;
const padEnd = (text: string, width: number) => text + ' '.repeat(Math.max(0, width - length(text)));

function textColumn(table: Table, index: number): TextColumn {
  const column = table.columns[index];
  if (column === undefined) return { lines: [], width: 0, isMinor: true, isWords: false };
  const cells = table.rows.map((row) => row[index]);
  const texts = cells.map((cell) => cellText(cell, column));
  const numeric = isNumeric(table, index);
  const tails = cells.map((cell, i) => fractionOf(cell, texts[i] ?? ''));
  const tail = Math.max(0, ...tails.map(length));
  const body = numeric
    ? texts.map((text, i) =>
        typeof cells[i] === 'string' ? text : text + ' '.repeat(tail - length(tails[i] ?? '')),
      )
    : texts;
  const all = [column.name, column.unit, ...body];
  const width = Math.max(...all.map(length));
  return {
    lines: all.map((text) => (numeric ? padStart(text, width) : padEnd(text, width))),
    width,
    isMinor: column.minor === true,
    isWords: !numeric,
  };
}
