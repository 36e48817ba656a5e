import type { LevelError, Miss } from '../../advice/lean/cant.ts';
import type { LateralFit } from '../../calibration/sideways/lateral-fit.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { DEGREE } from '../../quantities/exact.ts';
import { exactRanges, type Field } from '../field.ts';
import type { Session } from '../session.ts';
import { targetDigits } from '../side-words.ts';
import { VERDICT_WORDS } from '../verdict-words.ts';
import { type CauseWords, causeWords } from './cause-words.ts';
import type { CantCost, CauseFound, DriftRow } from './findings.ts';

/** A decimal more than a hit can be measured to: differences and small causes stand beside one another. */
const fineDigits = (units: DisplayUnits): number => targetDigits(units) + 1;

/** Where an arrow hits, for programs. */
export const MISS_FIELDS: readonly Field<Miss>[] = [
  { key: 'range_m', of: ({ range }) => range },
  { key: 'lateral_m', of: ({ lateral }) => lateral },
  { key: 'vertical_m', of: ({ vertical }) => vertical },
];

const fine = (name: string, of: (row: CantCost) => number): Field<CantCost> => ({
  name,
  unit: 'smallLength',
  digits: fineDigits,
  of,
});

/** One cant at one range, for a spreadsheet. */
export const CANT_COLUMNS: readonly Field<CantCost>[] = [
  { name: 'cant', unit: 'deg', digits: 2, of: ({ cant }) => cant },
  { name: 'range', unit: 'range', digits: exactRanges, of: ({ miss }) => miss.range },
  fine('lateral', ({ miss }) => miss.lateral),
  fine('vertical', ({ miss }) => miss.vertical),
  fine('lateral, zero set again', ({ rezeroed }) => rezeroed.lateral),
  fine('vertical, zero set again', ({ rezeroed }) => rezeroed.vertical),
];

/** What a level that is off costs: a degree for a person, a radian for programs. */
export const LEVEL_FIELDS: readonly Field<LevelError>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  {
    key: 'lateral_m_per_rad',
    datum: ({ lateralPerRadian }) => lateralPerRadian,
    name: 'per degree',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ lateralPerRadian }) => lateralPerRadian * DEGREE,
  },
  {
    key: 'rezeroed_m_per_rad',
    datum: ({ rezeroedPerRadian }) => rezeroedPerRadian,
    name: 'per degree, kept',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ rezeroedPerRadian }) => rezeroedPerRadian * DEGREE,
  },
];

const cause = (key: string, name: string, of: (row: DriftRow) => number | null): Field<DriftRow> => ({
  key,
  name,
  unit: 'smallLength',
  digits: fineDigits,
  of,
});

/** What moves the arrow sideways, by range. */
export const DRIFT_FIELDS: readonly Field<DriftRow>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  cause('gyroscopic_m', 'spin', ({ gyroscopic }) => gyroscopic),
  cause('magnus_ceiling_m', 'its side force, at most', ({ shaftForceCeiling }) => shaftForceCeiling),
  { ...cause('coriolis_m', 'Earth', ({ coriolis }) => coriolis), minor: true },
  cause('measured_m', 'measured', ({ measured }) => (measured === null ? null : measured.lateral)),
  cause('measured_sd_m', '±', ({ measured }) => (measured === null ? null : measured.sd)),
];

/** Where that puts the hits, before and after the lean. */
export const LEAN_FIELDS: readonly Field<DriftRow>[] = [
  cause('now_m', 'lateral now', ({ now }) => now),
  { ...cause('left_m', 'after leaning', ({ left }) => left), minor: true },
];

/** What the groups say about each cause, in the unit that an archer reads it in. */
export function causeFields(session: Session): readonly Field<CauseFound>[] {
  const words = causeWords(session);
  const told = ({ name }: CauseFound, number: (cause: CauseWords) => number): string =>
    number(words[name]).toFixed(words[name].digits);
  return [
    { key: 'name', datum: ({ name }) => name, name: 'cause', of: ({ name }) => words[name].name },
    { name: 'unit', of: ({ name }) => words[name].unit },
    {
      key: 'value',
      datum: ({ value }) => value,
      name: 'value',
      of: (row) => told(row, ({ of }) => of(row.value)),
    },
    { key: 'sd', datum: ({ sd }) => sd, name: '±', of: (row) => told(row, ({ of }) => of(row.sd)) },
    { key: 'prior_value', of: ({ priorValue }) => priorValue },
    {
      key: 'prior_sd',
      datum: ({ priorSd }) => priorSd,
      name: 'before, ±',
      of: (row) => (row.wasKnown ? told(row, ({ of }) => of(row.priorSd)) : 'unknown'),
    },
    {
      key: 'verdict',
      datum: ({ verdict }) => verdict,
      name: 'from',
      of: ({ verdict }) => VERDICT_WORDS[verdict],
    },
  ];
}

/** Each group beside the fit, for programs. */
export const GROUP_FIELDS: readonly Field<LateralFit['residuals'][number]>[] = [
  { key: 'range_m', of: ({ mark }) => mark.range },
  { key: 'lateral_m', of: ({ mark }) => mark.lateral },
  { key: 'sd_m', of: ({ mark }) => mark.sd },
  { key: 'curved_m', of: ({ curved }) => curved },
  { key: 'residual_m', of: ({ residual }) => residual },
  { key: 'studentised', of: ({ studentised }) => studentised },
];
