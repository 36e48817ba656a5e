import {
  type BuildReadings,
  FACTS,
  type Fact,
  ROW_VALUES,
  type RowValue,
} from '../../advice/builds/build-readings.ts';
import { rangeWords } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { nearestWord } from '../../quantities/nearest-word.ts';
import { QuestionError } from '../asked/question-error.ts';
import { factWording, rowWording, type Wording } from '../compare/fields.ts';

/** One column of a sweep: a number of the build, or of the build at one range. */
export interface Output {
  readonly name: string;
  readonly wording: Wording;
  readonly of: (readings: BuildReadings) => number | null;
}

const snake = (name: string): string => name.replace(/[A-Z]/g, (letter) => `_${letter.toLowerCase()}`);

const FACT_NAMES = new Map<string, Fact>(FACTS.map((fact) => [snake(fact), fact]));
const ROW_NAMES = new Map<string, RowValue>(ROW_VALUES.map((value) => [snake(value), value]));

/** What a sweep can show, by the names of the command line. */
export const OUTPUT_NAMES: readonly string[] = [...FACT_NAMES.keys(), ...ROW_NAMES.keys()];

/** The columns for a list of names; numbers by range get a column for each. @throws QuestionError for an unknown name */
export function outputsOf(
  option: string,
  names: string,
  ranges: readonly number[],
  units: DisplayUnits,
): readonly Output[] {
  return names
    .split(',')
    .map((name) => name.trim())
    .filter((name) => name !== '')
    .flatMap((name) => outputsNamed(option, name, ranges, units));
}

function outputsNamed(
  option: string,
  name: string,
  ranges: readonly number[],
  units: DisplayUnits,
): readonly Output[] {
  const fact = FACT_NAMES.get(name);
  if (fact !== undefined)
    return [{ name, wording: factWording(fact, units), of: ({ facts }) => facts[fact] }];
  const value = ROW_NAMES.get(name);
  if (value === undefined) {
    const meant = nearestWord(name, OUTPUT_NAMES);
    throw new QuestionError(
      `{${option}}: there is no "${name}"`,
      meant === undefined ? `Write one of ${OUTPUT_NAMES.join(', ')}.` : `Write ${meant}.`,
    );
  }
  const wording = rowWording(value, units);
  return ranges.map((range, i) => ({
    name,
    wording: { ...wording, label: `${wording.label} at ${rangeWords(range, units)}` },
    of: ({ rows }) => rows[i]?.[value] ?? null,
  }));
}
