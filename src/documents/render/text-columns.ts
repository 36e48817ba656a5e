import { cellText, fractionOf, isNumeric, type Table } from '../table/table.ts';

const COLUMN_GAP = '  ';

/** One column as text: name, unit, then a text for every row, all of one width. */
interface TextColumn {
  readonly lines: readonly string[];
  readonly width: number;
  readonly isMinor: boolean;
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
    Array.from({ length: table.rows.length + 2 }, (_, i) =>
      part
        .map(({ lines }) => lines[i] ?? '')
        .join(COLUMN_GAP)
        .trimEnd(),
    ).filter((_, i) => i !== 1 || hasUnits),
  );
}

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
    if (part.length > 1 && totalWidth([...part, column]) > width) parts.push([first, column]);
    else part.push(column);
  }
  return parts;
}

const length = (text: string) => Array.from(text).length;
const padStart = (text: string, width: number) => ' '.repeat(Math.max(0, width - length(text))) + text;
const padEnd = (text: string, width: number) => text + ' '.repeat(Math.max(0, width - length(text)));

function textColumn(table: Table, index: number): TextColumn {
  const column = table.columns[index];
  if (column === undefined) return { lines: [], width: 0, isMinor: true };
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
  };
}
