import { byLength, exactRanges, type Field } from '../field.ts';
import type { SureMark } from './findings.ts';

const RANGE: Field<SureMark> = {
  key: 'range_m',
  name: 'range',
  unit: 'range',
  digits: exactRanges,
  of: ({ mark }) => mark.range,
};
const TRAVEL: Field<SureMark> = {
  key: 'travel_m',
  name: 'travel',
  unit: 'mm',
  digits: 2,
  of: ({ mark }) => mark.travel,
};
const TRAVEL_SD: Field<SureMark> = { key: 'travel_sd_m', of: ({ uncertainty }) => uncertainty.travelSd };
const LAUNCH: Field<SureMark> = {
  key: 'launch_angle_rad',
  name: 'launch',
  unit: 'deg',
  digits: 3,
  of: ({ mark }) => mark.launchAngle,
};
const READING: Field<SureMark> = {
  key: 'reading',
  name: 'reading',
  symbol: 'scale',
  digits: 2,
  of: ({ mark }) => mark.reading,
};
const READING_SD: Field<SureMark> = {
  key: 'reading_sd',
  name: '±',
  symbol: 'scale',
  digits: 2,
  of: ({ mark, uncertainty }) => (mark.reading === null ? null : uncertainty.readingSd),
};
const ON_TARGET: Field<SureMark> = {
  key: 'on_target_sd_m',
  name: '± on target',
  unit: 'smallLength',
  digits: byLength(2, 0),
  of: ({ uncertainty }) => uncertainty.onTargetSd,
};
const NEARER_HIT: Field<SureMark> = {
  key: 'near_crossing_m',
  name: 'nearer hit',
  unit: 'range',
  digits: 1,
  of: ({ mark }) => mark.nearCrossing,
};
const HIGHEST: Field<SureMark> = {
  key: 'highest_m',
  name: 'highest',
  unit: 'smallLength',
  digits: byLength(1, 0),
  of: ({ mark }) => mark.highest.height,
};
const HIGHEST_RANGE: Field<SureMark> = {
  key: 'highest_range_m',
  name: 'highest at',
  unit: 'range',
  digits: 0,
  of: ({ mark }) => mark.highest.range,
};
const ASIDE: Field<SureMark> = {
  key: 'lateral_m',
  name: 'lateral',
  unit: 'smallLength',
  digits: byLength(2, 0),
  of: ({ mark }) => mark.lateral,
};
const CLEARANCE: Field<SureMark> = { key: 'clearance_m', of: ({ mark }) => mark.clearance };

/** A mark for programs, in the order of its document. */
export const MARK_DATA: readonly Field<SureMark>[] = [
  RANGE,
  TRAVEL,
  TRAVEL_SD,
  LAUNCH,
  READING,
  READING_SD,
  ON_TARGET,
  NEARER_HIT,
  HIGHEST,
  HIGHEST_RANGE,
  ASIDE,
  CLEARANCE,
];

const PATH_COLUMNS = [TRAVEL, ON_TARGET, LAUNCH, NEARER_HIT, HIGHEST, HIGHEST_RANGE, ASIDE];

/** What a screen has room for. */
export const shortColumns = (isScaleKnown: boolean): readonly Field<SureMark>[] =>
  isScaleKnown ? [RANGE, READING, READING_SD, TRAVEL, ON_TARGET] : [RANGE, TRAVEL, ON_TARGET];

/** A mark for a person: what to set comes right after the range. */
export const markColumns = (isScaleKnown: boolean): readonly Field<SureMark>[] =>
  isScaleKnown ? [RANGE, READING, READING_SD, ...PATH_COLUMNS] : [RANGE, ...PATH_COLUMNS];
