import type { StartEffect } from '../../advice/launch/swing.ts';
import type { Table } from '../../documents/table/table.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { tableOf } from '../field.ts';
import { type OfStart, START_HOLE_FIELDS, START_MISS_FIELDS } from './fields.ts';

/** Every start and range in a row. */
export const missTable = (starts: readonly StartEffect[], units: DisplayUnits): Table =>
  tableOf(
    START_MISS_FIELDS,
    ofEvery(starts, ({ misses }) => misses),
    units,
  );

/** Every start and sheet of paper in a row, or those of the paper at one range. */
export const holeTable = (
  starts: readonly StartEffect[],
  units: DisplayUnits,
  at: Metres | null = null,
): Table =>
  tableOf(
    START_HOLE_FIELDS,
    ofEvery(starts, ({ holes }) => holes.filter(({ range }) => at === null || range === at)),
    units,
  );

const ofEvery = <Part>(
  starts: readonly StartEffect[],
  partsOf: (start: StartEffect) => readonly Part[],
): readonly OfStart<Part>[] =>
  starts.flatMap((start) => partsOf(start).map((part) => ({ start: start.name, part })));
