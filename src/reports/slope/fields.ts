import { exactRanges, type Field } from '../field.ts';
import { targetDigits } from '../side-words.ts';
import type { SlopeRow } from './findings.ts';

const RANGE: Field<SlopeRow> = {
  key: 'range_m',
  name: 'range',
  unit: 'range',
  digits: exactRanges,
  of: ({ mark }) => mark.range,
};
const SLOPE: Field<SlopeRow> = {
  key: 'slope_rad',
  name: 'slope',
  unit: 'deg',
  digits: 1,
  of: ({ mark }) => mark.slope,
};
const MARK: Field<SlopeRow> = {
  key: 'mark_range_m',
  name: 'mark to set',
  unit: 'range',
  digits: 1,
  of: ({ mark }) => mark.markRange,
};
const TRAVEL: Field<SlopeRow> = {
  key: 'travel_m',
  name: 'travel',
  unit: 'mm',
  digits: 2,
  of: ({ mark }) => mark.travel,
};
const READING: Field<SlopeRow> = {
  key: 'reading',
  name: 'reading',
  symbol: 'scale',
  digits: 2,
  of: ({ reading }) => reading,
};
const MISSES: readonly Field<SlopeRow>[] = [
  {
    key: 'cosine_range_m',
    name: 'cosine rule',
    unit: 'range',
    digits: 1,
    of: ({ mark }) => mark.cosineRange,
  },
  {
    key: 'miss_by_cosine_m',
    name: 'hit by cosine',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ mark }) => mark.missByCosine,
  },
  {
    key: 'miss_by_range_m',
    name: 'hit by range',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ mark }) => mark.missByRange,
  },
  { key: 'hold_m', of: ({ mark }) => mark.hold },
  { key: 'third_axis_cant_rad', of: ({ third }) => third.cant },
  {
    key: 'third_axis_lateral_m',
    name: 'third axis',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ third }) => third.lateral,
  },
  { key: 'third_axis_vertical_m', of: ({ third }) => third.vertical },
];

/** A shot for programs, in the order of its document. */
export const SLOPE_DATA: readonly Field<SlopeRow>[] = [RANGE, SLOPE, MARK, TRAVEL, READING, ...MISSES];

/** A shot for a spreadsheet. */
export const SLOPE_COLUMNS: readonly Field<SlopeRow>[] = [SLOPE, RANGE, MARK, READING, TRAVEL, ...MISSES];
