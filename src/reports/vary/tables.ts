import { type Axis, gridPoint } from '../../advice/builds/vary.ts';
import type { Column, Table } from '../../documents/table/table.ts';
import type { VariedKey } from './axes.ts';
import type { Cell } from './cells.ts';
import type { VaryFindings } from './findings.ts';
import type { Output } from './outputs.ts';
import { heading } from './words.ts';

/** A row for every combination: the keys, then what is shown. */
export function varyTable({ axes, cells }: VaryFindings, outputs: readonly Output[]): Table {
  const shown = new Set(outputs.map(({ wording: { label } }) => label));
  // What is set and what comes of it may have one name, as the mass of the arrow has.
  const set = (label: string): string => (shown.has(label) ? `${label} set` : label);
  return {
    columns: [
      ...axes.map(({ name, unit }): Column => ({ name: set(heading(name)), unit })),
      ...outputs.map(({ wording: { label, unit, digits } }): Column => ({ name: label, unit, digits })),
    ],
    rows: cells.map((cell, i) => [
      ...gridPoint(axes.map(shownValues), i),
      ...outputs.map((output) => shownOf(cell, output)),
    ]),
  };
}

/** The values of a key as they are shown: numbers of one unit, or words. */
const shownValues = ({ name, values, numbers }: VariedKey): Axis<number | string> => ({
  name,
  values: numbers ?? values,
});

/** What a cell has to show of an output; null where there is no answer. */
export function shownOf(cell: Cell, { of, wording }: Output): number | null {
  const value = 'failure' in cell ? null : of(cell);
  return value === null ? null : wording.shown(value);
}
