import type { LevelError, Miss } from '../../advice/lean/cant.ts';
import type { Table } from '../../documents/table/table.ts';
import { at } from '../../numerics/at.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi } from '../../quantities/format.ts';
import { type Field, tableOf, through } from '../field.ts';
import type { Session } from '../session.ts';
import { shortRows } from '../short-rows.ts';
import { targetDigits } from '../side-words.ts';
import { CANT_COLUMNS, causeFields, DRIFT_FIELDS, LEAN_FIELDS, LEVEL_FIELDS } from './fields.ts';
import type { CantCosts, CantFindings } from './findings.ts';

/** Drift by cause; a cause that is not known at any range has no column. */
export function driftTable({ drift }: CantFindings, units: DisplayUnits): Table {
  const isKnown = ({ of }: (typeof DRIFT_FIELDS)[number]): boolean => drift.some((row) => of(row) !== null);
  return tableOf([...DRIFT_FIELDS.filter(isKnown), ...LEAN_FIELDS], drift, units);
}

/** What the groups say about each cause. */
export const causeTable = (session: Session, { causes }: CantFindings): Table =>
  tableOf(causeFields(session), causes, session.units);

/** Cants shown to a person; programs and spreadsheets get them all. */
const MOST_CANTS = 3;
/** A cant below this is none, rad. */
const NO_CANT = 1e-9;

/** The largest clockwise cant and others evenly below it: the other way costs the same. */
function shownCants(effects: readonly CantCosts[]): readonly CantCosts[] {
  const clockwise = effects.filter(({ cant }) => cant > NO_CANT);
  const step = Math.max(1, Math.ceil(clockwise.length / MOST_CANTS));
  return clockwise.filter((_, i) => (clockwise.length - 1 - i) % step === 0);
}

/** One range: what a level that is off costs, and where each cant shown hits. */
interface CostRow {
  readonly error: LevelError;
  readonly misses: readonly Miss[];
}

/** What a lean that nobody noticed costs, by range; at most so many round ranges. */
export function costTable(
  { levelErrors, effects }: CantFindings,
  units: DisplayUnits,
  most = Number.POSITIVE_INFINITY,
): Table {
  const shown = shownCants(effects);
  const length = { unit: 'smallLength', digits: targetDigits } as const;
  const fields: readonly Field<CostRow>[] = [
    ...through(LEVEL_FIELDS, ({ error }: CostRow) => error),
    ...shown.flatMap(({ cant }, k): readonly Field<CostRow>[] => [
      { name: cantName(cant), ...length, of: ({ misses }) => at(misses, k).lateral },
      { name: 'low', ...length, minor: true, of: ({ misses }) => at(misses, k).vertical },
    ]),
  ];
  const rows = levelErrors.map((error, i) => ({
    error,
    misses: shown.map(({ costs }) => at(costs, i).miss),
  }));
  const inUnit = ({ error }: CostRow): number => fromSi(error.range, units.range);
  return tableOf(fields, shortRows(rows, inUnit, most), units);
}

/** A cant at the head of a column: "5°", with a decimal only where it has one. */
const cantName = (cant: number): string => formatQuantity(cant, 'deg', 1).replace(/\.0(?=°)/, '');

/** Every cant at every range. */
export const cantTable = ({ effects }: CantFindings, units: DisplayUnits): Table =>
  tableOf(
    CANT_COLUMNS,
    effects.flatMap(({ costs }) => costs),
    units,
  );
