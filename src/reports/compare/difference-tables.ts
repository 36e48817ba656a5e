import { FACTS, type RowValue } from '../../advice/builds/build-readings.ts';
import type { Comparison, Contrast, Difference } from '../../advice/builds/comparison.ts';
import type { UncertainReadings } from '../../advice/builds/uncertain-readings.ts';
import { numberText, typeset } from '../../documents/table/number-text.ts';
import { rangeColumn, rangeWords } from '../../documents/table/range-digits.ts';
import type { Cell, Column, Table } from '../../documents/table/table.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi } from '../../quantities/format.ts';
import { causeWords, factWording, rowWording, type Wording } from './fields.ts';

/** A standard error in the decimals of its number, or one more; empty when even that shows nothing. */
export function spread(sd: number, { digits, shown }: Wording): string {
  const value = Math.abs(shown(sd) - shown(0));
  const text = [digits, digits + 1]
    .map((places) => numberText(value, places))
    .find((found) => Number(found) > 0);
  return text ?? '';
}

const differenceText = (value: number, { digits, shown }: Wording): string => {
  const text = numberText(shown(value) - shown(0), digits);
  return Number(text) > 0 ? `+${text}` : text;
};

/** What a difference is worth, in a word. */
function verdictWord(difference: Difference, wording: Wording): string {
  if (isSame(difference, wording)) return 'same';
  return difference.real ? 'real' : 'cannot tell';
}

/** Whether a difference is nothing in the decimals that it is shown with. */
export const isSame = ({ value }: Difference, wording: Wording): boolean =>
  Number(differenceText(value, wording)) === 0;

/** One build against the base, number by number, with the error of the difference. */
export function factTable(base: UncertainReadings, contrast: Contrast, units: DisplayUnits): Table {
  const told = FACTS.filter((fact) => contrast.facts[fact] !== null);
  return {
    columns: [
      { name: '', unit: '' },
      { name: 'unit', unit: '' },
      { name: 'now', unit: '' },
      { name: 'this build', unit: '' },
      { name: 'difference', unit: '' },
      { name: '±', unit: '' },
      { name: '', unit: '' },
      { name: 'error mostly from', unit: '' },
    ],
    rows: told.flatMap((fact): readonly (readonly Cell[])[] => {
      const difference = contrast.facts[fact];
      const [before, after] = [base.facts[fact], contrast.readings.facts[fact]];
      if (difference === null || before === null || after === null) return [];
      const wording = factWording(fact, units);
      const { label, unit, digits, shown } = wording;
      const error = spread(difference.sd, wording);
      return [
        [
          label,
          unit,
          numberText(shown(before.value), digits),
          numberText(shown(after.value), digits),
          differenceText(difference.value, wording),
          error,
          verdictWord(difference, wording),
          error === '' || difference.mostly === null ? '' : causeWords(difference.mostly),
        ],
      ];
    }),
  };
}

/** The numbers by range that a comparison shows as differences. */
const COMPARED: readonly RowValue[] = ['speed', 'energy', 'momentum', 'windDrift'];

/** Differences by range, each with its error; a star stands at what is not told apart. */
export function rangeTable(ranges: readonly number[], contrast: Contrast, units: DisplayUnits): Table {
  const mark: Wording = { ...rowWording('drop', units), label: 'with the present mark' };
  const shown = [mark, ...COMPARED.map((key) => rowWording(key, units))];
  return {
    columns: [rangeColumn(ranges, units), ...shown.map(({ label, unit }): Column => ({ name: label, unit }))],
    rows: contrast.rows.map((row, i) => [
      fromSi(at(ranges, i), units.range),
      ...[row.withBaseMark, ...COMPARED.map((key) => row[key])].map((difference, k) => {
        const wording = shown[k];
        return difference === null || wording === undefined ? null : withError(difference, wording);
      }),
    ]),
  };
}

/** A difference as "+2.3 ± 0.4", with a star when it may be nothing. */
export function withError(difference: Difference, wording: Wording): string {
  const { value, sd, real } = difference;
  const error = spread(sd, wording);
  const star = real || isSame(difference, wording) ? '' : ' *';
  return `${differenceText(value, wording)}${error === '' ? '' : ` ± ${error}`}${star}`;
}

/** The builds' differences at one range, a row each: what a decision is made on. */
export function decisionTable({ questions, others }: Comparison, index: number, units: DisplayUnits): Table {
  const facts = (['launchSpeed', 'launchMomentum'] as const).map((key) => ({
    wording: factWording(key, units),
    of: ({ facts: found }: Contrast) => found[key],
  }));
  const rows = (['energy', 'windDrift'] as const).map((key) => ({
    wording: rowWording(key, units),
    of: ({ rows: found }: Contrast) => found[index]?.[key] ?? null,
  }));
  const mark = {
    wording: { ...rowWording('drop', units), label: 'hit, present marks' },
    of: ({ rows: found }: Contrast) => found[index]?.withBaseMark ?? null,
  };
  const shown = [...facts, ...rows, mark];
  const range = rangeWords(at(questions.ranges, index), units);
  return {
    title: `Differences from now; energy, drift and hit at ${range}`,
    columns: [
      { name: '', unit: '' },
      ...shown.map(({ wording: { label, unit } }): Column => ({ name: label, unit })),
    ],
    rows: others.map((contrast) => [
      contrast.readings.build.name,
      ...shown.map(({ wording, of }) => {
        const difference = of(contrast);
        return difference === null ? null : typeset(withError(difference, wording));
      }),
    ]),
    notes: [
      '± one standard error of the difference; * cannot be told apart. Wind drift: by ' +
        `${formatQuantity(questions.crosswind, units.windSpeed, units.windSpeed === 'mph' ? 0 : 1)} from the ` +
        'side.',
    ],
  };
}
