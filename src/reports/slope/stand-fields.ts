import { byLength, type Field } from '../field.ts';
import type { StandRow } from './stand.ts';

const STAND: Field<StandRow> = {
  key: 'stand_height_m',
  name: 'stand',
  unit: 'height',
  digits: 0,
  of: ({ stand }) => stand,
};
const ALONG: Field<StandRow> = { key: 'counted_along', name: 'counted along', of: ({ along }) => along };
const GROUND: Field<StandRow> = {
  key: 'ground_range_m',
  name: 'along the ground',
  unit: 'range',
  digits: 1,
  of: ({ ground }) => ground,
};
const LINE: Field<StandRow> = {
  key: 'line_range_m',
  name: 'along the line',
  unit: 'range',
  digits: 1,
  of: ({ mark }) => mark.range,
};
const SET: readonly Field<StandRow>[] = [
  { key: 'slope_rad', name: 'slope', unit: 'deg', digits: 0, of: ({ mark }) => mark.slope },
  {
    key: 'mark_range_m',
    name: 'set',
    unit: 'range',
    digits: 1,
    datum: ({ mark }) => mark.markRange,
    of: ({ mark }) => (mark.markRange === null ? 'highest' : mark.markRange),
  },
  { key: 'reading', name: 'reading', symbol: 'scale', digits: 2, of: ({ reading }) => reading },
  {
    key: 'hold_m',
    name: 'hold low',
    unit: 'smallLength',
    digits: byLength(1, 0),
    of: ({ mark }) => mark.hold,
  },
];

/** A shot from a stand for programs. */
export const STAND_DATA: readonly Field<StandRow>[] = [GROUND, LINE, STAND, ALONG, ...SET];
/** A shot from a stand for a spreadsheet. */
export const STAND_COLUMNS: readonly Field<StandRow>[] = [STAND, ALONG, GROUND, LINE, ...SET];
/** A shot under the heading of its stand, the round number first. */
export const GROUND_COLUMNS: readonly Field<StandRow>[] = [
  { ...GROUND, digits: 0, strong: true },
  LINE,
  ...SET,
];
export const LINE_COLUMNS: readonly Field<StandRow>[] = [
  { ...LINE, digits: 0, strong: true },
  GROUND,
  ...SET,
];
