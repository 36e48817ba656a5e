import { cellText, type Table } from '../../documents/table/table.ts';

/** What is shown of one range, each with its unit, as the table of marks prints it. */
export interface MarkShown {
  readonly range: string;
  /** The reading of the scale, or the travel of the pin where the sight has no scale. */
  readonly mark: string;
  readonly markUnit: string;
  readonly error: string;
  readonly onTarget: string;
  readonly onTargetUnit: string;
}

/** The row of a table of marks for one range; null when the arrow or the sight does not reach it. */
export function markShown({ columns, rows }: Table, row: number): MarkShown | null {
  const cells = rows[row];
  if (cells === undefined) return null;
  const named = (name: string) => {
    const i = columns.findIndex((column) => column.name === name);
    const column = columns[i];
    return column === undefined ? null : { text: cellText(cells[i], column), unit: column.unit };
  };
  const range = named('range');
  const mark = named('reading') ?? named('travel');
  if (range === null || mark === null) return null;
  return {
    range: range.text,
    mark: mark.text,
    markUnit: named('reading') === null ? `${mark.unit} of pin travel` : mark.unit,
    error: named('±')?.text ?? '',
    onTarget: named('± on target')?.text ?? '',
    onTargetUnit: named('± on target')?.unit ?? '',
  };
}
