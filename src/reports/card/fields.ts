import type { SlopeMark } from '../../advice/range/slope.ts';
import { rangeDigits } from '../../documents/table/range-digits.ts';
import type { DisplayUnits } from '../../quantities/display-units.ts';
import { DEGREE } from '../../quantities/exact.ts';
import { byLength, type Field } from '../field.ts';
import type { CardFindings, CardRow } from './findings.ts';
import { windWords } from './words.ts';

/** A range on a card has a decimal only where yards are shown in metres, or the other way round, and never more. */
const MOST_RANGE_DIGITS = 1;

const small = { unit: 'smallLength', digits: byLength(1, 0) } as const;

/** Everything about one range. */
export function cardFields(
  { crosswind, isScaled }: Pick<CardFindings, 'crosswind' | 'isScaled'>,
  units: DisplayUnits,
): readonly Field<CardRow>[] {
  return [
    {
      key: 'range_m',
      name: 'range',
      unit: 'range',
      digits: (shown, ranges) => Math.min(rangeDigits(ranges, shown), MOST_RANGE_DIGITS),
      strong: true,
      of: ({ mark }) => mark.range,
    },
    {
      key: 'reading',
      ...(isScaled ? { name: 'reading' } : {}),
      symbol: 'scale',
      digits: 2,
      strong: true,
      of: ({ mark }) => mark.reading,
    },
    {
      key: 'reading_sd',
      of: ({ mark, uncertainty }) => (mark.reading === null ? null : uncertainty.readingSd),
    },
    { key: 'travel_m', name: 'travel', unit: 'mm', digits: 2, of: ({ mark }) => mark.travel },
    { key: 'travel_sd_m', of: ({ uncertainty }) => uncertainty.travelSd },
    {
      key: 'on_target_sd_m',
      datum: ({ uncertainty }) => uncertainty.onTargetSd,
      name: '± on target',
      ...small,
      of: ({ toldSd }) => toldSd,
    },
    { key: 'highest_m', name: 'highest', ...small, minor: true, of: ({ mark }) => mark.highest.height },
    { key: 'time_s', name: 'time', symbol: 's', digits: 2, minor: true, of: ({ time }) => time },
    {
      key: 'speed_mps',
      name: 'speed',
      unit: 'speed',
      digits: ({ speed }) => (speed === 'fps' ? 0 : 1),
      of: ({ speed }) => speed,
    },
    { key: 'energy_J', name: 'energy', unit: 'energy', digits: 1, of: ({ energy }) => energy },
    {
      key: 'momentum_kgmps',
      name: 'momentum',
      unit: 'momentum',
      digits: 3,
      minor: true,
      of: ({ momentum }) => momentum,
    },
    {
      key: 'wind_drift_m',
      name: `wind ${windWords(crosswind, units)}`,
      ...small,
      of: ({ windDrift }) => windDrift,
    },
    {
      key: 'cant_m_per_rad',
      datum: ({ lateralPerRadian }) => lateralPerRadian,
      name: 'cant 1°',
      ...small,
      of: ({ lateralPerRadian }) => lateralPerRadian * DEGREE,
    },
  ];
}

/** What to take off a range on a slope, for programs. */
export const CUT_FIELDS: readonly Field<SlopeMark>[] = [
  { key: 'range_m', of: ({ range }) => range },
  { key: 'slope_rad', of: ({ slope }) => slope },
  { key: 'mark_range_m', of: ({ markRange }) => markRange },
  { key: 'cut_m', of: ({ range, markRange }) => (markRange === null ? null : range - markRange) },
];
