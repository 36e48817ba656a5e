import { describe, expect, it } from 'vitest';
import { displayUnits } from '../../../src/quantities/display-units.ts';
import { columnsOf, dataOf, type Field, tableOf } from '../../../src/reports/field.ts';

/** A height of 0.25 m for every metre of range. */
const steep: readonly Field<number>[] = [
  { key: 'height_per_range', name: 'height', unit: 'smallLength', per: 'range', digits: 2, of: (row) => row },
];
const shown = (system: 'imperial' | 'metric') => tableOf(steep, [0.25], displayUnits(system));

describe('a field counted for a unit of another', () => {
  it('is 9 in for every yard, a yard being 36 in', () => {
    expect(shown('imperial').columns).toEqual([{ name: 'height', unit: 'in/yd', digits: 2 }]);
    // The factors are exact; the difference is what two divisions round.
    expect(Math.abs(Number(shown('imperial').rows[0]?.[0]) - 9)).toBeLessThan(1e-14 /* in/yd */);
  });
  it('is 250 mm for every metre', () => {
    expect(shown('metric').columns).toEqual([{ name: 'height', unit: 'mm/m', digits: 2 }]);
    expect(Math.abs(Number(shown('metric').rows[0]?.[0]) - 250)).toBeLessThan(1e-12 /* mm/m */);
  });
  it('stays in SI for programs', () => expect(dataOf(steep, [0.25])).toEqual([{ height_per_range: 0.25 }]));
});

interface Row {
  /** m */
  readonly far: number;
  readonly note: string | null;
}
const fields: readonly Field<Row>[] = [
  { key: 'far_m', name: 'far', unit: 'range', digits: 1, of: ({ far }) => far },
  { key: 'noted', datum: ({ note }) => note !== null, name: 'note', of: ({ note }) => note },
  { key: 'hidden', of: () => 7 },
];
// A yard is 0.9144 m by definition.
const rows: readonly Row[] = [
  { far: 9.144, note: 'ten' },
  { far: 0.9144, note: null },
];

describe('a list of fields', () => {
  it('gives JSON its rows in SI, a missing value as null and never as 0', () => {
    expect(dataOf(fields, rows)).toEqual([
      { far_m: 9.144, noted: true, hidden: 7 },
      { far_m: 0.9144, noted: false, hidden: 7 },
    ]);
  });
  it('gives JSON its columns in the same order', () => {
    expect(columnsOf(fields, rows)).toEqual({
      far_m: [9.144, 0.9144],
      noted: [true, false],
      hidden: [7, 7],
    });
    expect(columnsOf(fields, [])).toEqual({ far_m: [], noted: [], hidden: [] });
  });
  it('gives a reader the same values in units asked for', () => {
    const { columns, rows: cells } = tableOf(fields, rows, displayUnits('imperial'));
    expect(columns.map(({ name, unit }) => [name, unit])).toEqual([
      ['far', 'yd'],
      ['note', ''],
    ]);
    expect(cells).toEqual([
      [10, 'ten'],
      [1, null],
    ]);
  });
});
