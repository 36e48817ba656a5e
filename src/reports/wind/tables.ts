import type { WindMiss } from '../../advice/range/wind-drift.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { Cell, Column, Table } from '../../documents/table/table.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { tableOf } from '../field.ts';
import { targetDigits } from '../side-words.ts';
import { HOUR_FIELDS } from './fields.ts';
import type { WindFindings } from './findings.ts';
import { airWords, hourOf } from './words.ts';

const rangeColumns = (
  units: DisplayUnits,
  ranges: readonly Metres[],
  unit: string,
  digits: number,
): readonly Column[] => ranges.map((range) => ({ name: rangeWords(range, units), unit, digits }));

/** One value of a wind by hour (down) and range (across). */
const clockTable = (
  { ranges, effects }: WindFindings,
  units: DisplayUnits,
  { unit, digits }: { readonly unit: string; readonly digits: number },
  value: (row: WindMiss) => Cell,
): Table => ({
  columns: [{ name: 'from', unit: '' }, ...rangeColumns(units, ranges, unit, digits)],
  rows: effects.map(({ rows }, hour) => [hourOf(hour), ...rows.map(value)]),
});

/** Drift by hour and range. */
export const driftTable = (found: WindFindings, units: DisplayUnits): Table =>
  clockTable(
    found,
    units,
    { unit: symbolOf(units.smallLength), digits: targetDigits(units) },
    ({ lateral }) => fromSi(lateral, units.smallLength),
  );

/** Hours from ahead round by the right to behind. */
const HALF_CLOCK = 7;

/** Drift by the hours of one side. */
export function sideTable(found: WindFindings, units: DisplayUnits): Table {
  const table = driftTable(found, units);
  return { ...table, rows: table.rows.slice(0, HALF_CLOCK) };
}

/** What to add to the range, by hour and range. */
export const markTable = (found: WindFindings, units: DisplayUnits): Table =>
  clockTable(found, units, { unit: symbolOf(units.range), digits: 2 }, ({ markChange }) =>
    markChange === null ? null : fromSi(markChange, units.range),
  );

/** Where the marks of the air here hit in other air. */
export const airTable = ({ ranges, airs }: WindFindings, units: DisplayUnits): Table => ({
  columns: [
    { name: 'air', unit: '' },
    { name: 'density altitude', unit: symbolOf(units.height), digits: 0 },
    ...rangeColumns(units, ranges, symbolOf(units.smallLength), targetDigits(units)),
    { name: 'tape', unit: '' },
  ],
  rows: airs.map((change) => [
    airWords(change.other, units),
    fromSi(change.densityAltitude, units.height),
    ...change.rows.map(({ vertical }) => fromSi(vertical, units.smallLength)),
    change.holds ? 'holds' : 'is off',
  ]),
});

/** A row for every hour and range. */
export const hourTable = ({ effects }: WindFindings, units: DisplayUnits): Table =>
  tableOf(
    HOUR_FIELDS,
    effects.flatMap(({ rows }, i) => rows.map((miss) => ({ hour: hourOf(i), miss }))),
    units,
  );
