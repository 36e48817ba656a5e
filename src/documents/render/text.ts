import { type Cell, cellText, fractionOf, isNumeric, type Table } from '../table/table.ts';

const COLUMN_GAP = '  ';

/**
 * A table for a terminal or a text file: title, a line of names, a line of units, the rows, the notes.
 *
 * Numbers stand with their decimal points under one another, a missing value ("-") in the place of the units digit, words
 * at the left. Widths count characters, so text in scripts with double-width signs does not line up.
 *
 * @throws DomainError for a number that is not finite
 */
export function renderTableText(table: Table): string {
  const columns = table.columns.map((_, i) => columnLines(table, i));
  const lines = Array.from({ length: table.rows.length + 2 }, (_, i) =>
    columns
      .map((column) => column[i] ?? '')
      .join(COLUMN_GAP)
      .trimEnd(),
  );
  const hasUnits = table.columns.some(({ unit }) => unit !== '');
  return [
    ...(table.title === undefined ? [] : [table.title, '']),
    ...lines.filter((_, i) => i !== 1 || hasUnits),
    ...(table.notes === undefined || table.notes.length === 0 ? [] : ['', ...table.notes]),
    '',
  ].join('\n');
}

const length = (text: string) => Array.from(text).length;
const padStart = (text: string, width: number) => ' '.repeat(Math.max(0, width - length(text))) + text;
const padEnd = (text: string, width: number) => text + ' '.repeat(Math.max(0, width - length(text)));

/** One column: name, unit, then a text for every row, all of one width. */
function columnLines(table: Table, index: number): readonly string[] {
  const column = table.columns[index];
  if (column === undefined) return [];
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
  return all.map((text) => (numeric ? padStart(text, width) : padEnd(text, width)));
}

/** RFC 4180 breaks lines so. */
const LINE_END = '\r\n';

/**
 * A table for a spreadsheet: comma-separated, one header row of "name (unit)", a missing value as an empty field. Title and
 * notes are left out, since every row must have the header's fields.
 *
 * @throws DomainError for a number that is not finite
 * @source RFC 4180, section 2
 */
export function renderTableCsv(table: Table): string {
  const header = table.columns.map(({ name, unit }) => (unit === '' ? name : `${name} (${unit})`));
  const rows = table.rows.map((row) =>
    table.columns.map((column, i) => (isMissing(row[i]) ? '' : cellText(row[i], column))),
  );
  return [header, ...rows].map((fields) => fields.map(quoted).join(',') + LINE_END).join('');
}

const isMissing = (cell: Cell | undefined) => cell === null || cell === undefined;

const quoted = (field: string) => (/[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field);
