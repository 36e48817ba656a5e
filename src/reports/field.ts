import { rangeDigits } from '../documents/table/range-digits.ts';
import type { Cell, Column, Table } from '../documents/table/table.ts';
import type { DisplayUnits } from '../quantities/display-units.ts';
import { type DisplayUnit, fromSi, symbolOf } from '../quantities/format.ts';

/** Decimals in the unit shown: a number, or a rule from the units in use and the column's values (SI). */
type Digits = number | ((units: DisplayUnits, values: readonly number[]) => number);

/** A value of a row as JSON takes it. */
type Datum = number | string | boolean | null | object;

/** One value of a row, named once for the table, the spreadsheet and the JSON document. */
export interface Field<Row> {
  /** Key in the JSON document, the SI unit in its name; left out of it when absent. */
  readonly key?: string;
  /** What the JSON document holds, where that is not what the column shows. */
  readonly datum?: (row: Row) => Datum;
  /** Name of the column; left out of tables when absent. */
  readonly name?: string;
  /** By purpose ("range") or a fixed unit ("mm"); without it the value is a pure number or words. */
  readonly unit?: keyof DisplayUnits | DisplayUnit;
  /** What the unit is counted for: a height for every yard of range. */
  readonly per?: keyof DisplayUnits;
  /** Shown in place of the unit's symbol, for scales of the archer's own. */
  readonly symbol?: string;
  readonly digits?: Digits;
  readonly strong?: boolean;
  /** Left out first where a table is too wide for a screen. */
  readonly minor?: boolean;
  /** The value in SI, words, or null for "none". */
  readonly of: (row: Row) => number | string | null;
}

/** Ranges print exactly, with as many decimals as the roundest notation of all of them needs. */
export const exactRanges: Digits = (units, values) => rangeDigits(values, units);

/** Decimals for a length on the target: so many in inches, so many in millimetres. */
export const byLength =
  (inches: number, millimetres: number): Digits =>
  ({ smallLength }) =>
    smallLength === 'in' ? inches : millimetres;

const isPurpose = (unit: string, units: DisplayUnits): unit is keyof DisplayUnits => unit in units;

const unitOf = <Row>({ unit }: Field<Row>, units: DisplayUnits): DisplayUnit | null => {
  if (unit === undefined) return null;
  return isPurpose(unit, units) ? units[unit] : unit;
};

function columnOf<Row>(field: Field<Row>, rows: readonly Row[], units: DisplayUnits): Column {
  const unit = unitOf(field, units);
  const { digits, strong, minor, per } = field;
  const plain = unit === null ? '' : symbolOf(unit);
  const symbol = field.symbol ?? (per === undefined ? plain : `${plain}/${symbolOf(units[per])}`);
  const values = rows.map(field.of).filter((value) => typeof value === 'number');
  return {
    name: field.name ?? '',
    unit: symbol,
    ...(digits === undefined ? {} : { digits: typeof digits === 'number' ? digits : digits(units, values) }),
    ...(strong === undefined ? {} : { strong }),
    ...(minor === undefined ? {} : { minor }),
  };
}

function cellOf<Row>(field: Field<Row>, row: Row, units: DisplayUnits): Cell {
  const value = field.of(row);
  const unit = unitOf(field, units);
  if (typeof value !== 'number' || unit === null) return value;
  return field.per === undefined ? fromSi(value, unit) : fromSi(value, unit) / fromSi(1, units[field.per]);
}

/** Fields of a part of a row as fields of the row. */
export const through = <Row, Part>(
  fields: readonly Field<Part>[],
  part: (row: Row) => Part,
): readonly Field<Row>[] =>
  fields.map(({ of, datum, ...field }) => ({
    ...field,
    of: (row: Row) => of(part(row)),
    ...(datum === undefined ? {} : { datum: (row: Row) => datum(part(row)) }),
  }));

/** The rows in the units of the reader: for a person and for a spreadsheet. */
export function tableOf<Row>(
  fields: readonly Field<Row>[],
  rows: readonly Row[],
  units: DisplayUnits,
  title?: string,
): Table {
  const shown = fields.filter(({ name }) => name !== undefined);
  return {
    ...(title === undefined ? {} : { title }),
    columns: shown.map((field) => columnOf(field, rows, units)),
    rows: rows.map((row) => shown.map((field) => cellOf(field, row, units))),
  };
}

/** One row in SI under the keys of the contract: for programs. */
export const datumOf = <Row>(fields: readonly Field<Row>[], row: Row): Readonly<Record<string, Datum>> =>
  Object.fromEntries(
    fields.flatMap((field) => (field.key === undefined ? [] : [[field.key, dataIn(field)(row)]])),
  );

const dataIn =
  <Row>({ datum, of }: Field<Row>) =>
  (row: Row): Datum =>
    datum === undefined ? of(row) : datum(row);

export const dataOf = <Row>(fields: readonly Field<Row>[], rows: readonly Row[]): readonly object[] =>
  rows.map((row) => datumOf(fields, row));

/** The rows in SI as one list for each key of the contract: for documents that hold columns. */
export const columnsOf = <Row>(
  fields: readonly Field<Row>[],
  rows: readonly Row[],
): Readonly<Record<string, readonly Datum[]>> =>
  Object.fromEntries(
    fields.flatMap((field) => (field.key === undefined ? [] : [[field.key, rows.map(dataIn(field))]])),
  );
