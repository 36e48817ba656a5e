import { readFileSync } from 'node:fs';

/** One printed number: its text keeps the digits the source gave, which set the tolerance. */
export interface Printed {
  readonly text: string;
  readonly value: number;
  /** Half of the last printed digit, in the column's unit. */
  readonly half: number;
}
export type Row = Readonly<Record<string, Printed>>;

export const printed = (text: string): Printed => {
  const [mantissa = '', exponent = '0'] = text.toLowerCase().split('e');
  const decimals = mantissa.split('.')[1]?.length ?? 0;
  // An empty cell is no number; `Number('')` would make it 0.
  return {
    text,
    value: text === '' ? Number.NaN : Number(text),
    half: 0.5 * 10 ** (Number(exponent) - decimals),
  };
};

/**
 * The rows of `reference/<folder>/<file>`; a file without rows, or with a header other than `columns`, is an error,
 * so that no check passes because its data is missing.
 */
export const referenceTable = (folder: string, file: string, columns: readonly string[]): readonly Row[] =>
  tableAt(`reference/${folder}/${file}`, columns);

/** Every file read so far, so that a test can find those that no claim uses. */
const seen = new Set<string>();
export const tablesRead: ReadonlySet<string> = seen;

/** The rows of a file outside `reference/`, under the same rules. */
export const tableAt = (path: string, columns: readonly string[]): readonly Row[] => {
  seen.add(path);
  return tableOf(readFileSync(path, 'utf8'), path, columns);
};

/** The rows of a comma-separated text. @throws Error without rows, with another header, or with a row of another length */
export function tableOf(text: string, path: string, columns: readonly string[]): readonly Row[] {
  const [header = '', ...lines] = text.trim().split('\n');
  if (header !== columns.join(','))
    throw new Error(`${path}: header is "${header}", expected "${columns.join(',')}"`);
  if (lines.length === 0) throw new Error(`${path}: no rows`);
  return lines.map((line) => {
    const cells = line.split(',');
    if (cells.length !== columns.length) throw new Error(`${path}: "${line}" has ${cells.length} cells`);
    return Object.fromEntries(columns.map((column, i) => [column, printed((cells[i] ?? '').trim())]));
  });
}

/** The cell of a row that the header check has vouched for. */
export const cell = (row: Row, column: string): Printed => {
  const found = row[column];
  if (found === undefined) throw new Error(`no column ${column}`);
  return found;
};
