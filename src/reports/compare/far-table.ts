import type { RowValue } from '../../advice/builds/build-readings.ts';
import type { Contrast, Difference } from '../../advice/builds/comparison.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { Table } from '../../documents/table/table.ts';
import { at } from '../../numerics/at.ts';
import { listed } from '../listed.ts';
import { heightWords, roughDigits } from '../side-words.ts';
import { withError } from './difference-tables.ts';
import { factWording, rowWording, type Wording } from './fields.ts';
import type { CompareFindings } from './findings.ts';

/** Named in a first line; more stand in the table. */
const MOST_NAMED = 3;

/** Where each build hits with the present marks at the farthest range: what a changed arrow costs first. */
export function shortVerdict({ comparison, session: { units } }: CompareFindings): string {
  const { others, questions } = comparison;
  const range = rangeWords(at(questions.ranges, questions.ranges.length - 1), units);
  const told = others.slice(0, MOST_NAMED).map(({ readings, rows }) => {
    const { withBaseMark } = at(rows, rows.length - 1);
    return `${readings.build.name} ${heightWords(withBaseMark.value, units, roughDigits(units))}`;
  });
  return `With the present mark for ${range}: ${listed(told)}.`;
}

export const farWords = ({ comparison: { questions }, session: { units } }: CompareFindings): string =>
  `at ${rangeWords(at(questions.ranges, questions.ranges.length - 1), units)}`;

export const FAR_LEGEND =
  'mark: where it hits with the present mark, low negative. ±: one standard error. *: cannot be told apart.';

const SHOWN: readonly RowValue[] = ['windDrift', 'momentum', 'energy'];

/** A line for each build: what it changes at the farthest range, with errors. */
export function farTable({ comparison: { others }, session: { units } }: CompareFindings): Table {
  const mark: Wording = { ...rowWording('drop', units), label: 'mark' };
  const speed = factWording('launchSpeed', units);
  const rows = SHOWN.map((key) => rowWording(key, units));
  return {
    columns: [
      { name: 'build', unit: '' },
      { name: mark.label, unit: mark.unit },
      { name: 'launch speed', unit: speed.unit },
      ...rows.map(({ label, unit }, k) => ({ name: label, unit, minor: k > 0 })),
    ],
    rows: others.map((contrast) => [
      contrast.readings.build.name,
      cell(contrast.rows.at(-1)?.withBaseMark, mark),
      cell(contrast.facts.launchSpeed, speed),
      ...SHOWN.map((key, k) => cell(farOf(contrast, key), at(rows, k))),
    ]),
  };
}

const farOf = ({ rows }: Contrast, key: RowValue): Difference | null | undefined => rows.at(-1)?.[key];

const cell = (difference: Difference | null | undefined, wording: Wording): string | null =>
  difference === null || difference === undefined ? null : withError(difference, wording);
