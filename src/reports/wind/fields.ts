import type { AirChange } from '../../advice/range/air-change.ts';
import type { WindMiss } from '../../advice/range/wind-drift.ts';
import { exactRanges, type Field, through } from '../field.ts';
import { targetDigits } from '../side-words.ts';

/** Where an arrow of the still-air marks hits in a wind, and what to add to the range. */
export const WIND_FIELDS: readonly Field<WindMiss>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  {
    key: 'lateral_m',
    name: 'lateral',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ lateral }) => lateral,
  },
  {
    key: 'vertical_m',
    name: 'vertical',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ vertical }) => vertical,
  },
  { key: 'mark_change_m', name: 'mark', unit: 'range', digits: 2, of: ({ markChange }) => markChange },
];

/** One range under a wind from one hour of the clock. */
export interface HourMiss {
  readonly hour: string;
  readonly miss: WindMiss;
}

export const HOUR_FIELDS: readonly Field<HourMiss>[] = [
  { name: 'from', of: ({ hour }) => hour },
  ...through(WIND_FIELDS, ({ miss }: HourMiss) => miss),
];

type AirMiss = AirChange['rows'][number];

/** Where the marks of the air here hit in other air. */
export const AIR_FIELDS: readonly Field<AirMiss>[] = [
  { key: 'range_m', of: ({ range }) => range },
  { key: 'vertical_m', of: ({ vertical }) => vertical },
  { key: 'travel_change_m', of: ({ travelChange }) => travelChange },
];
