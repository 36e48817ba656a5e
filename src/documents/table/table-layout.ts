import { at } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import type { Weight } from '../page/drawing.ts';
import { LEADING } from '../page/text-block.ts';
import { textWidth } from '../page/text-measure.ts';
import { wrapText } from '../page/wrap-text.ts';
import { typeset } from './number-text.ts';
import { cellText, fractionOf, isNumeric, type Table } from './table.ts';

/**
 * Lettering of a table: this size unless another is asked for, if it fits, down to the smallest that a person reads without
 * a glass, mm.
 */
const TEXT_SIZE = 2.5;
const SMALLEST_SIZE = 1.8;
const SIZE_STEP = 0.1;
/** Between columns, in ems. */
const COLUMN_GAP = 1.5;

/** A title stands out from the cells under it by weight, and is never smaller. */
export const tableTitle = ({ size }: { readonly size: number }) =>
  ({ role: 'table-title', size: Math.max(2.9, 1.1 * size), weight: 'bold' }) as const;
export const tableNote = { role: 'table-note', size: 2.2, colour: 'slate' } as const;

/** From one row's baseline to the next, and the white space under a table, in ems of the table. */
export const ROW_STEP = 1.55;
const AFTER_TABLE = 0.8;

export interface TableCell {
  readonly text: string;
  /** The anchor's x from the table's left, mm: the start of words, the end of a number. */
  readonly x: number;
}

export interface TableColumn {
  readonly anchor: 'start' | 'end';
  /** Of the cells. */
  readonly weight: Weight;
  readonly name: TableCell;
  readonly unit: TableCell;
  readonly cells: readonly TableCell[];
}

/** A table measured for paper, mm; its rows may be drawn in parts on several pages. */
export interface TableLayout {
  readonly size: number;
  /** Of title, columns and notes together. */
  readonly width: number;
  readonly columnsWidth: number;
  readonly columns: readonly TableColumn[];
  readonly rowCount: number;
  readonly title: readonly string[];
  readonly hasUnits: boolean;
  readonly notes: readonly string[];
}

/** Rows `from` up to but not including `to`. */
export interface TablePart {
  readonly from: number;
  readonly to: number;
}

/**
 * Measure a table for the width of a page, in type of the size `largest` (mm) or smaller where it must be.
 * @throws DomainError when even the smallest readable type is too wide, or a number is not finite
 */
export function layOutTable(table: Table, room: number, largest = TEXT_SIZE): TableLayout {
  for (let size = largest; size >= SMALLEST_SIZE; size -= SIZE_STEP) {
    const { columns, width } = layOutColumns(table, size);
    if (width > room) continue;
    const title = table.title ?? '';
    const titleStyle = tableTitle({ size });
    const widest = Math.min(room, Math.max(width, textWidth(title, titleStyle.size, 'bold')));
    return {
      size,
      width: widest,
      columnsWidth: width,
      columns,
      rowCount: table.rows.length,
      title: wrapText(typeset(title), { ...titleStyle, width: widest }),
      hasUnits: table.columns.some(({ unit }) => unit !== ''),
      notes: (table.notes ?? []).flatMap((note) =>
        wrapText(typeset(note), { width: widest, size: tableNote.size }),
      ),
    };
  }
  throw new DomainError(
    'the width of a table (mm)',
    Math.ceil(layOutColumns(table, SMALLEST_SIZE).width),
    `at most ${Math.floor(room)} in readable type; leave columns out`,
  );
}

function layOutColumns(table: Table, size: number) {
  let left = 0;
  const columns = table.columns.map((column, index): TableColumn => {
    const cells = table.rows.map((row) => row[index]);
    const numeric = isNumeric(table, index);
    const printed = cells.map((cell) => cellText(cell, column));
    const name = typeset(column.name);
    const texts = printed.map(typeset);
    const weight = column.strong === true ? 'bold' : 'regular';
    const tails = cells.map((cell, i) => textWidth(fractionOf(cell, printed[i] ?? ''), size, weight));
    const tail = Math.max(0, ...tails);
    const shift = (i: number) => (numeric && typeof cells[i] !== 'string' ? tail - at(tails, i) : 0);
    const width = Math.max(
      textWidth(name, size, 'bold'),
      textWidth(column.unit, size),
      ...texts.map((text, i) => textWidth(text, size, weight) + shift(i)),
    );
    const edge = numeric ? left + width : left;
    left += width + COLUMN_GAP * size;
    return {
      anchor: numeric ? 'end' : 'start',
      weight,
      name: { text: name, x: edge },
      unit: { text: column.unit, x: edge },
      cells: texts.map((text, i) => ({ text, x: edge - shift(i) })),
    };
  });
  return { columns, width: Math.max(0, left - COLUMN_GAP * size) };
}

/** Heights of a table's parts, mm. */
export const titleHeight = (layout: TableLayout): number =>
  layout.title.length * LEADING * tableTitle(layout).size;
export const headHeight = ({ size, hasUnits }: TableLayout): number => (hasUnits ? 2.7 : 1.6) * size;
const notesHeight = ({ notes, size }: TableLayout): number =>
  notes.length === 0 ? 0 : notes.length * LEADING * tableNote.size + 0.4 * size;

/** The height of some of a table's rows with the head above them and, under the last, the notes, mm. */
export function tableHeight(layout: TableLayout, { from, to }: TablePart): number {
  const rows = (to - from) * ROW_STEP * layout.size;
  const notes = to === layout.rowCount ? notesHeight(layout) : 0;
  return titleHeight(layout) + headHeight(layout) + rows + notes + AFTER_TABLE * layout.size;
}

/** The most rows that fit a height when drawn from row `from`; none if not even the head and one row do. */
export function rowsThatFit(layout: TableLayout, from: number, height: number): number {
  let to = layout.rowCount;
  while (to > from && tableHeight(layout, { from, to }) > height) to -= 1;
  return to - from;
}
