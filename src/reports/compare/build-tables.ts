import type { Fact, RowValue } from '../../advice/builds/build-readings.ts';
import { type Comparison, relativeStiffness } from '../../advice/builds/comparison.ts';
import { standardError } from '../../advice/builds/error-form.ts';
import type { UncertainReadings } from '../../advice/builds/uncertain-readings.ts';
import { reynoldsNumber } from '../../atmosphere/reynolds-number.ts';
import { numberText } from '../../documents/table/number-text.ts';
import { rangeColumn } from '../../documents/table/range-digits.ts';
import type { Column, Table } from '../../documents/table/table.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { fromSi, symbolOf } from '../../quantities/format.ts';
import { spread } from './difference-tables.ts';
import { factWording, rowWording } from './fields.ts';

/** Everything about one build by range. */
export function buildTable(
  ranges: readonly number[],
  readings: UncertainReadings,
  units: DisplayUnits,
): Table {
  const scaled = readings.rows.some(({ reading }) => reading !== null);
  const keys: readonly RowValue[] = [
    scaled ? 'reading' : 'travel',
    'time',
    'speed',
    'energy',
    'momentum',
    'drop',
    'highest',
    'drift',
    'windDrift',
  ];
  const guess = { unit: symbolOf(units.range), digits: 1 };
  return {
    columns: [
      rangeColumn(ranges, units),
      ...keys.map((key): Column => {
        const { label, unit, digits } = rowWording(key, units);
        return { name: label, unit, digits };
      }),
      { name: 'guess short', ...guess },
      { name: 'guess long', ...guess },
    ],
    rows: readings.rows.map((row, i) => {
      const room = readings.guesses[i];
      return [
        fromSi(at(ranges, i), units.range),
        ...keys.map((key) => {
          const found = row[key];
          return found === null ? null : rowWording(key, units).shown(found.value);
        }),
        room?.short === null || room === null || room === undefined ? null : fromSi(room.short, units.range),
        room === null || room === undefined ? null : fromSi(room.long, units.range),
      ];
    }),
  };
}

const DRAG_WORDS: Readonly<Record<string, string>> = {
  'shaft-friction': 'friction of the shaft',
  'vane-friction': 'friction of the vanes',
  'vane-edges': 'edges of the vanes',
  helical: 'what the helical costs',
  point: 'pressure on the point',
  blades: 'blades',
  collar: 'collar',
  base: 'base',
};

/** The drag of every build term by term at launch, as built up; a given or calibrated coefficient stands in the last row. */
export function dragTable(builds: readonly UncertainReadings[]): Table {
  const terms = builds.map(({ build }) => {
    const { conditions, launchSpeed } = build.rig;
    const reynolds = reynoldsNumber(conditions.air, launchSpeed, conditions.arrow.diameter);
    return build.arrow.dragTerms?.(build.arrow.boundaryLayer, reynolds) ?? [];
  });
  const names = [...new Set(terms.flatMap((list) => list.map(({ name }) => name)))];
  return {
    title: 'Drag coefficient, on the cross-section of the shaft',
    columns: [
      { name: '', unit: '' },
      ...builds.map(({ build }) => ({ name: build.name, unit: '', digits: 3 })),
    ],
    rows: [
      ...names.map((name) => [
        DRAG_WORDS[name] ?? name,
        ...terms.map((list) => list.find((term) => term.name === name)?.coefficient ?? null),
      ]),
      ['flown with (given, calibrated)', ...builds.map(({ facts }) => facts.dragCoefficient?.value ?? null)],
    ],
  };
}

/** The facts of all builds beside one another, each with its own error; the base is called "now". */
export function sideBySide({ base, others }: Comparison, facts: readonly Fact[], units: DisplayUnits): Table {
  const builds = [base, ...others.map(({ readings }) => readings)];
  const told = facts.filter((fact) => builds.some((readings) => readings.facts[fact] !== null));
  const stiffness = others.map(relativeStiffness);
  return {
    columns: [
      { name: '', unit: '' },
      { name: 'unit', unit: '' },
      ...builds.map(({ build }, i) => ({ name: i === 0 ? 'now' : build.name, unit: '' })),
    ],
    rows: [
      ...told.map((fact) => {
        const wording = factWording(fact, units);
        return [
          wording.label,
          wording.unit,
          ...builds.map((readings) => {
            const found = readings.facts[fact];
            if (found === null) return null;
            const text = numberText(wording.shown(found.value), wording.digits);
            const error = spread(standardError(found.error), wording);
            return error === '' ? text : `${text} ± ${error}`;
          }),
        ];
      }),
      ...(base.facts.bendingFrequency === null
        ? []
        : (['free', 'pushed'] as const).map((kind) => [
            kind === 'free' ? 'stiffness, free' : 'stiffness, pushed',
            '% of now',
            '100',
            ...stiffness.map((found) => (found === null ? null : (100 * found[kind]).toFixed(0))),
          ])),
    ],
  };
}

/** Every build and range in one table, for a spreadsheet. */
export function longTable({ questions, base, others }: Comparison, units: DisplayUnits): Table {
  const builds = [base, ...others.map(({ readings }) => readings)];
  const tables = builds.map((readings) => ({
    name: readings.build.name,
    table: buildTable(questions.ranges, readings, units),
  }));
  return {
    columns: [{ name: 'build', unit: '' }, ...(tables[0]?.table.columns ?? [])],
    rows: tables.flatMap(({ name, table }) => table.rows.map((row) => [name, ...row])),
  };
}
