import { type Cell, cellText, type Table } from '../table/table.ts';
import { foldText } from './fold-text.ts';
import { type TextRoom, tableBlocks } from './text-columns.ts';

/** A file is as wide as it needs to be. */
const UNBOUNDED: TextRoom = { width: Number.POSITIVE_INFINITY, keepsAll: true };

/**
 * A table for a terminal or a text file: title, a line of names, a line of units, the rows, the notes.
 *
 * Numbers stand with their decimal points under one another, a missing value ("-") in the place of the units digit, words
 * at the left. Widths count characters, so text in scripts with double-width signs does not line up. Where the room is narrower
 * than the table, minor columns are left out and then the table is split.
 *
 * @throws DomainError for a number that is not finite
 */
export function renderTableText(table: Table, room: TextRoom = UNBOUNDED): string {
  const fold = (line: string): string => foldText(line, room.width);
  const blocks = tableBlocks(table, room);
  return [
    ...(table.title === undefined ? [] : [fold(table.title), '']),
    ...blocks.flatMap((lines, i) => (i === 0 ? lines : ['', ...lines])),
    ...(table.notes === undefined || table.notes.length === 0 ? [] : ['', ...table.notes.map(fold)]),
    '',
  ].join('\n');
}

/** RFC 4180 breaks lines so. */
const LINE_END = '\r\n';

/**
 * A table for a spreadsheet: comma-separated, one header row of "name (unit)", a missing value as an empty field. Title and
 * notes are left out, since every row must have the header's fields. Words that a spreadsheet would run begin with an apostrophe.
 *
 * @throws DomainError for a number that is not finite
 * @source RFC 4180, section 2
 */
export function renderTableCsv(table: Table): string {
  const header = table.columns.map(({ name, unit }) => (unit === '' ? name : `${name} (${unit})`));
  const rows = table.rows.map((row) =>
    table.columns.map((column, i) => {
      const cell = row[i];
      if (isMissing(cell)) return '';
      return typeof cell === 'string' ? asWords(cell) : cellText(cell, column);
    }),
  );
  return [header.map(asWords), ...rows].map((fields) => fields.map(quoted).join(',') + LINE_END).join('');
}

const isMissing = (cell: Cell | undefined) => cell === null || cell === undefined;

/** A spreadsheet takes words that begin so for a formula and runs it; after an apostrophe it shows them. Numbers stay numbers. */
const FORMULA = /^\s*[=+\-@\uFF1D\uFF0B\uFF0D\uFF20]|^[\t\r]/;
const asWords = (field: string): string =>
  FORMULA.test(field) && !Number.isFinite(Number(field)) ? `'${field}` : field;

const quoted = (field: string) => (/[",\r\n]/.test(field) ? `"${field.replaceAll('"', '""')}"` : field);
