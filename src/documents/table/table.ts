import { numberText } from './number-text.ts';

export interface Column {
  readonly name: string;
  /** Empty for a pure number or for words. */
  readonly unit: string;
  /** Decimals of the column's numbers; up to six significant digits each when absent. */
  readonly digits?: number;
  /** On paper in bold: what the eye looks for first. */
  readonly strong?: boolean;
  /** Left out first where a table is too wide for a screen. */
  readonly minor?: boolean;
}

/** A number, words, or null for "none". */
export type Cell = number | string | null;

/** Rows of results with what they mean; nothing yet about type or paper. */
export interface Table {
  readonly title?: string;
  readonly columns: readonly Column[];
  readonly rows: readonly (readonly Cell[])[];
  readonly notes?: readonly string[];
}

/** How a missing value is shown to a person; a file for programs leaves the field empty instead. */
const NO_VALUE = '-';

/** A cell as text; a column that a row does not reach counts as missing. @throws DomainError for a number not finite */
export function cellText(cell: Cell | undefined, column: Column): string {
  if (cell === null || cell === undefined) return NO_VALUE;
  return typeof cell === 'number' ? numberText(cell, column.digits) : cell;
}

/** Whether a column is set to the right, as numbers are: it holds at least one, or nothing but missing values. */
export const isNumeric = (table: Table, index: number): boolean =>
  table.rows.every((row) => typeof row[index] !== 'string') ||
  table.rows.some((row) => typeof row[index] === 'number');

/** What a printed number has after its units digit: ".25", or "e-7"; words and missing values have nothing there. */
export const fractionOf = (cell: Cell | undefined, text: string): string =>
  typeof cell === 'number' ? text.replace(/^-?\d+/, '') : '';
