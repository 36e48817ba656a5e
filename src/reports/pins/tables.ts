import type { Table } from '../../documents/table/table.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { formatQuantity, fromSi, symbolOf } from '../../quantities/format.ts';
import { tableOf } from '../field.ts';
import { pinFields } from './fields.ts';
import type { PinsFindings } from './findings.ts';
import { pinName } from './words.ts';

export const pinTable = ({ pins, ring }: PinsFindings, units: DisplayUnits): Table =>
  tableOf(pinFields(ring), pins, units, `Pins, and a ring of ${formatQuantity(ring, units.smallLength, 0)}`);

/** Hits by range (down) and pin (across). */
export function betweenTable({ pins, between }: PinsFindings, units: DisplayUnits): Table {
  const ranges = [...new Set(between.map(({ range }) => range))];
  return {
    title: 'Hits between pins and beyond the last, low (-) or high',
    columns: [
      { name: 'range', unit: symbolOf(units.range), digits: 0 },
      ...pins.map((pin) => ({
        name: pinName(pin, units),
        unit: symbolOf(units.smallLength),
        digits: units.smallLength === 'in' ? 1 : 0,
      })),
    ],
    rows: ranges.map((range) => [
      fromSi(range, units.range),
      ...pins.map(({ pin }) => {
        const hit = between.find((each) => each.range === range && each.pin === pin);
        return hit === undefined ? null : fromSi(hit.height, units.smallLength);
      }),
    ]),
  };
}

/** What every pin of a slider is on for at each setting of the top one. */
export const settingsTable = ({ pins, settings }: PinsFindings, units: DisplayUnits): Table => ({
  title: 'With the slider set for the top pin, every pin is on for',
  columns: pins.map(({ pin }) => ({
    name: pin === 1 ? 'top pin' : `pin ${pin}`,
    unit: symbolOf(units.range),
    digits: 1,
  })),
  rows: settings.map(({ ranges }) =>
    ranges.map((range) => (range === null ? null : fromSi(range, units.range))),
  ),
});
