import type { StartName } from '../advice/launch/bad-starts.ts';
import type { Table } from '../documents/table/table.ts';
import { at } from '../numerics/at.ts';
import type { DisplayUnits } from '../quantities/display-units.ts';
import { fromSi } from '../quantities/format.ts';
import type { Metres } from '../quantities/quantity.ts';
import { byLength, exactRanges, type Field, tableOf, through } from './field.ts';
import { shortRows } from './short-rows.ts';
import { targetDigits } from './side-words.ts';

/** How far apart two flights hit at one range. */
export interface Miss {
  readonly range: Metres;
  readonly right: Metres;
  readonly high: Metres;
}

/** The misses of one start, by range. */
export interface StartMisses {
  readonly name: StartName;
  readonly misses: readonly Miss[];
}

/** One miss; a spreadsheet has a decimal more of it than the tables that a person reads. */
export const MISS_FIELDS: readonly Field<Miss>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'right_m', name: 'right', unit: 'smallLength', digits: byLength(3, 1), of: ({ right }) => right },
  { key: 'high_m', name: 'high', unit: 'smallLength', digits: byLength(3, 1), of: ({ high }) => high },
];

interface RangeMisses {
  readonly range: Metres;
  /** Of every start, in the order of the starts. */
  readonly misses: readonly Miss[];
}

/** Misses with ranges down and starts across. All starts have the same ranges. */
export function startsAcross(starts: readonly StartMisses[], units: DisplayUnits): Table {
  const fields: readonly Field<RangeMisses>[] = [
    { name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
    ...starts.flatMap(({ name }, k) =>
      through(
        [
          { name: `${name}: right`, unit: 'smallLength', digits: targetDigits, of: ({ right }) => right },
          { name: `${name}: high`, unit: 'smallLength', digits: targetDigits, of: ({ high }) => high },
        ] satisfies readonly Field<Miss>[],
        ({ misses }: RangeMisses) => at(misses, k),
      ),
    ),
  ];
  const rows = at(starts, 0).misses.map(({ range }, i) => ({
    range,
    misses: starts.map(({ misses }) => at(misses, i)),
  }));
  return tableOf(fields, rows, units);
}

/** What a launch does mostly: a tail to the side sideways, a tail high upwards. */
const MAINLY: Readonly<Record<StartName, 'right' | 'high'>> = {
  clean: 'high',
  'tail left': 'right',
  'tail high': 'high',
  'nock travel left': 'right',
};

/** Rows of a screen. */
const SHORT_ROWS = 5;

/**
 * Each start by the way it goes mostly, at a few round ranges: what a screen has room for.
 *
 * @param sdOf the standard error of the first start's miss, where there is one
 */
export function mainMisses<M extends Miss>(
  starts: readonly { readonly name: StartName; readonly misses: readonly M[] }[],
  units: DisplayUnits,
  sdOf: ((miss: M) => Metres) | null = null,
): Table {
  const length = { unit: 'smallLength', digits: targetDigits } as const;
  type Row = readonly M[];
  const fields: readonly Field<Row>[] = [
    { name: 'range', unit: 'range', digits: exactRanges, of: (row) => at(row, 0).range },
    ...starts.flatMap(({ name }, k): readonly Field<Row>[] => [
      {
        name: `${name}: ${MAINLY[name]}`,
        ...length,
        minor: name === 'tail high',
        of: (row) => at(row, k)[MAINLY[name]],
      },
      ...(k === 0 && sdOf !== null ? [{ name: '±', ...length, of: (row: Row) => sdOf(at(row, k)) }] : []),
    ]),
  ];
  const rows = at(starts, 0).misses.map((_, i): Row => starts.map(({ misses }) => at(misses, i)));
  return tableOf(
    fields,
    shortRows(rows, (row) => fromSi(at(row, 0).range, units.range), SHORT_ROWS),
    units,
  );
}
