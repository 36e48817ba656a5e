import type { Item, TextItem } from '../page/drawing.ts';
import { textBlock } from '../page/text-block.ts';
import {
  headHeight,
  ROW_STEP,
  type TableCell,
  type TableColumn,
  type TableLayout,
  type TablePart,
  tableNote,
  tableTitle,
  titleHeight,
} from './table-layout.ts';

/** A hairline after this many rows guides the eye along the row. */
const ROWS_TOGETHER = 5;

/** Draw some rows of a measured table with its title and head above them and, under the last row, its notes. */
export function drawTable(
  layout: TableLayout,
  part: TablePart,
  place: { readonly left: number; readonly top: number },
): readonly Item[] {
  const { size } = layout;
  const { left } = place;
  const headTop = place.top + titleHeight(layout);
  const rowsTop = headTop + headHeight(layout);
  const cell = (column: TableColumn, { text, x }: TableCell, y: number): TextItem => ({
    kind: 'text',
    role: 'cell',
    x: left + x,
    y,
    text,
    size,
    colour: 'ink',
    anchor: column.anchor,
  });
  const rule = (y: number, colour: 'ink' | 'mist'): Item => ({
    kind: 'line',
    role: 'rule',
    from: { x: left, y },
    to: { x: left + layout.columnsWidth, y },
    colour,
    stroke: colour === 'ink' ? 0.18 : 0.1,
  });
  const rows = Array.from({ length: part.to - part.from }, (_, i) => part.from + i);
  const rowBottom = (row: number) => rowsTop + (row - part.from + 1) * ROW_STEP * size;
  const spot = { left, width: layout.width };
  const notesTop = rowsTop + rows.length * ROW_STEP * size + 0.4 * size;
  return [
    ...textBlock(layout.title, { ...spot, top: place.top }, tableTitle(layout)).items,
    ...layout.columns.flatMap((column): readonly Item[] => [
      { ...cell(column, column.name, headTop + size), role: 'column', weight: 'bold' },
      ...(layout.hasUnits
        ? [
            {
              ...cell(column, column.unit, headTop + 2.2 * size),
              role: 'unit',
              colour: 'slate',
            } satisfies Item,
          ]
        : []),
    ]),
    rule(rowsTop - 0.1 * size, 'ink'),
    ...rows.flatMap((row) => [
      ...layout.columns.flatMap((column) => {
        const found = column.cells[row];
        return found === undefined
          ? []
          : [{ ...cell(column, found, rowBottom(row) - 0.45 * size), weight: column.weight }];
      }),
      ...((row + 1) % ROWS_TOGETHER === 0 && row + 1 < part.to ? [rule(rowBottom(row), 'mist')] : []),
    ]),
    ...(part.to === layout.rowCount
      ? textBlock(layout.notes, { ...spot, top: notesTop }, tableNote).items
      : []),
  ];
}
