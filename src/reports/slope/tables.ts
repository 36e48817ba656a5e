import type { SlopeMark } from '../../advice/range/slope.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Cell, Table } from '../../documents/table/table.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { targetDigits } from '../side-words.ts';

interface Shown {
  readonly unit: string;
  readonly digits: number;
  readonly value: (mark: SlopeMark) => Cell;
}

/** One value of every mark, laid out with ranges down and slopes across. */
function slopeTable(units: DisplayUnits, marks: readonly SlopeMark[], { unit, digits, value }: Shown): Table {
  const slopes = [...new Set(marks.map(({ slope }) => slope as number))];
  const ranges = [...new Set(marks.map(({ range }) => range as number))];
  const cellAt = (range: number, slope: number): Cell => {
    const mark = marks.find((one) => one.range === range && one.slope === slope);
    return mark === undefined ? null : value(mark);
  };
  return {
    columns: [
      { ...rangeColumn(ranges, units), strong: true },
      ...slopes.map((slope) => ({ name: slopeName(slope), unit, digits })),
    ],
    rows: ranges.map((range) => [fromSi(range, units.range), ...slopes.map((slope) => cellAt(range, slope))]),
  };
}

/** A slope at the head of a column: "+10°", with a decimal only where it has one. */
const slopeName = (slope: number): string =>
  `${slope > 0 ? '+' : ''}${formatQuantity(slope, 'deg', 1).replace(/\.0(?=°)/, '')}`;

/** The level mark to set; null where even the highest mark is too low a pin. */
export const markTable = (units: DisplayUnits, marks: readonly SlopeMark[]): Table =>
  slopeTable(units, marks, {
    unit: symbolOf(units.range),
    digits: 1,
    value: ({ markRange }) => (markRange === null ? null : fromSi(markRange, units.range)),
  });

/** What to take off the range before setting the mark; null where even the highest mark is too low a pin. */
export const cutTable = (units: DisplayUnits, marks: readonly SlopeMark[], digits = 0): Table =>
  slopeTable(units, marks, {
    unit: symbolOf(units.range),
    digits,
    value: ({ range, markRange }) => (markRange === null ? null : fromSi(range - markRange, units.range)),
  });

/** Where the cosine rule hits. */
export const cosineTable = (units: DisplayUnits, marks: readonly SlopeMark[]): Table =>
  slopeTable(units, marks, {
    unit: symbolOf(units.smallLength),
    digits: targetDigits(units),
    value: ({ missByCosine }) => fromSi(missByCosine, units.smallLength),
  });
