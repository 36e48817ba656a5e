import { CAUSES, type Cause } from '../../advice/scatter/scatter-causes.ts';
import type { RangeScatter } from '../../advice/scatter/scatter-groups.ts';
import type { Table } from '../../documents/table/table.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { exactRanges, type Field, tableOf, through } from '../field.ts';
import { targetDigits } from '../side-words.ts';
import { SPREAD_FIELDS } from './fields.ts';
import { bothOf, type ScatterFindings, type VaneScatter } from './findings.ts';
import { CAUSE_WORDS, vaneWords } from './words.ts';

/** One range of both fletchings. */
interface BothAt {
  readonly own: RangeScatter;
  readonly other: RangeScatter;
}

const named = (
  { vanes }: VaneScatter,
  fields: readonly Field<RangeScatter>[],
): readonly Field<RangeScatter>[] =>
  fields.map((field) => (field.name === 'group' ? { ...field, name: `group, ${vaneWords(vanes)}` } : field));

/** Group sizes of both fletchings beside one another. */
export function groupTable({ own, other }: ScatterFindings, units: DisplayUnits): Table {
  const rows = own.ranges.map((row, i): BothAt => ({ own: row, other: at(other.ranges, i) }));
  const [range, ...spreads] = SPREAD_FIELDS;
  return tableOf(
    [
      ...through(range === undefined ? [] : [range], ({ own: row }: BothAt) => row),
      ...through(named(own, spreads), ({ own: row }: BothAt) => row),
      ...through(named(other, spreads), ({ other: row }: BothAt) => row),
    ],
    rows,
    units,
  );
}

const causeOf = ({ causes }: RangeScatter, wanted: Cause) =>
  at(
    causes.filter(({ cause }) => cause === wanted),
    0,
  );

const RANGE: Field<RangeScatter> = {
  name: 'range',
  unit: 'range',
  digits: exactRanges,
  of: ({ range }) => range,
};

const shareField = (cause: Cause, name: string): Field<RangeScatter> => ({
  name,
  symbol: '%',
  digits: 1,
  of: (row) => 100 * causeOf(row, cause).share,
});

/** The share of each cause by range. */
export const shareTable = ({ ranges }: VaneScatter, units: DisplayUnits): Table =>
  tableOf(
    [
      RANGE,
      ...CAUSES.map((cause) => shareField(cause, CAUSE_WORDS[cause])),
      { name: 'interaction', symbol: '%', digits: 0, of: ({ together }) => 100 * together },
    ],
    ranges,
    units,
  );

interface FletchedRow {
  readonly vanes: string;
  readonly row: RangeScatter;
}

/** Every fletching and range in a row, with the group each cause would make alone. */
export const scatterTable = (found: ScatterFindings, units: DisplayUnits): Table =>
  tableOf(
    [
      { name: 'vanes', of: ({ vanes }: FletchedRow) => vanes },
      ...through(SPREAD_FIELDS, ({ row }: FletchedRow) => row),
      ...CAUSES.flatMap((cause) =>
        through(
          [
            {
              name: `${CAUSE_WORDS[cause]} alone`,
              unit: 'smallLength',
              digits: targetDigits,
              of: (row: RangeScatter) => causeOf(row, cause).group,
            },
            shareField(cause, `${CAUSE_WORDS[cause]} share`),
          ],
          ({ row }: FletchedRow) => row,
        ),
      ),
    ],
    bothOf(found).flatMap(({ vanes, ranges }) =>
      ranges.map((row): FletchedRow => ({ vanes: vaneWords(vanes), row })),
    ),
    units,
  );
