import type { Column, Table } from '../../documents/table/table.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi, symbolOf, toSi } from '../../quantities/format.ts';
import { cutTable } from '../slope/tables.ts';
import { isToldSpread } from '../told-spread.ts';
import type { CardFindings } from './findings.ts';

/** Everything about every range, a row each. */
export function cardTable(found: CardFindings): Table {
  const { session, crosswind, rows } = found;
  const { units, calibration } = session;
  const scaled = calibration.rig.scale !== null;
  const small = { unit: symbolOf(units.smallLength), digits: units.smallLength === 'in' ? 1 : 0 };
  const degree = toSi(1, 'deg');
  const columns: readonly Column[] = [
    { name: 'range', unit: symbolOf(units.range), digits: rangeDigits(found), strong: true },
    ...(scaled ? [{ name: 'reading', unit: 'scale', digits: 2, strong: true }] : []),
    { name: 'travel', unit: 'mm', digits: 2 },
    { name: '± on target', ...small },
    { name: 'highest', ...small },
    { name: 'time', unit: 's', digits: 2 },
    { name: 'speed', unit: symbolOf(units.speed), digits: units.speed === 'fps' ? 0 : 1 },
    { name: 'energy', unit: symbolOf(units.energy), digits: 1 },
    { name: 'momentum', unit: symbolOf(units.momentum), digits: 3 },
    { name: `wind ${windWords(crosswind, units)}`, ...small },
    { name: 'cant 1 °', ...small },
  ];
  return {
    columns,
    rows: rows.map(({ mark, uncertainty, time, speed, energy, momentum, windDrift, lateralPerRadian }) => [
      fromSi(mark.range, units.range),
      ...(scaled ? [mark.reading] : []),
      fromSi(mark.travel, 'mm'),
      isToldSpread(uncertainty.onTargetSd) ? fromSi(uncertainty.onTargetSd, units.smallLength) : null,
      fromSi(mark.highest.height, units.smallLength),
      time,
      fromSi(speed, units.speed),
      fromSi(energy, units.energy),
      fromSi(momentum, units.momentum),
      fromSi(windDrift, units.smallLength),
      fromSi(lateralPerRadian * degree, units.smallLength),
    ]),
  };
}

/** A decimal only where yards are shown in metres, or the other way round. */
const rangeDigits = ({ session: { units }, rows }: CardFindings): number =>
  rows.every(({ mark }) => {
    const shown = fromSi(mark.range, units.range);
    return Math.abs(shown - Math.round(shown)) < 1e-6;
  })
    ? 0
    : 1;

/** A wind short enough for the head of a column: "10 mph". */
export const windWords = (speed: number, units: DisplayUnits): string =>
  formatQuantity(speed, units.windSpeed, 1).replace(/\.0(?= )/, '');

/** What to take off the range uphill and downhill; half a yard far out is an inch on the target. */
export const cardCuts = ({ session: { units }, slopes }: CardFindings): Table => cutTable(units, slopes, 1);

/** Readings that no scale may have; empty when there are none. */
export function belowNoughtNote({ session: { units }, rows }: CardFindings): string {
  const below = rows.filter(({ mark }) => (mark.reading ?? 0) < 0).map(({ mark }) => mark.range);
  if (below.length === 0) return '';
  const told = (range: number): string => formatQuantity(range, units.range, 0);
  const [from, to] = [told(below[0] ?? 0), told(below.at(-1) ?? 0)];
  const where =
    below.at(-1) === rows.at(-1)?.mark.range
      ? `from ${from} on`
      : from === to
        ? `at ${from}`
        : `from ${from} to ${to}`;
  return `The mark lies below zero on the scale ${where}. Check that your sight can move that far before you rely on it.`;
}
