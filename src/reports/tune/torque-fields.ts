import type { MovedMark } from '../../advice/tuning/moved-marks.ts';
import type { TorqueSetting } from '../../advice/tuning/torque-settings.ts';
import { exactRanges, type Field } from '../field.ts';
import { targetDigits } from '../side-words.ts';

const miss = { unit: 'smallLength', digits: targetDigits } as const;

export const SETTING_FIELDS: readonly Field<TorqueSetting>[] = [
  { key: 'extension_m', name: 'extension', ...miss, of: ({ extension }) => extension },
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'left_mean_m', name: 'turned left', ...miss, of: ({ leftMean }) => leftMean },
  { key: 'right_mean_m', name: 'turned right', ...miss, of: ({ rightMean }) => rightMean },
  { key: 'arrows_left', of: ({ arrowsLeft }) => arrowsLeft },
  { key: 'arrows_right', of: ({ arrowsRight }) => arrowsRight },
  { key: 'shift_m', name: 'shift', ...miss, of: ({ shift }) => shift },
  { key: 'shift_sd_m', name: '±', ...miss, of: ({ shiftSd }) => shiftSd },
  { key: 'moves', name: 'hits go', of: ({ moves }) => moves },
];

const ofPin = { unit: 'mm', digits: 2 } as const;

export const MOVED_MARK_FIELDS: readonly Field<MovedMark>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'travel_before_m', name: 'before', ...ofPin, of: ({ before }) => before },
  { key: 'travel_after_m', name: 'after', ...ofPin, of: ({ after }) => after },
  { key: 'old_tape_miss_m', name: 'old tape hits high', ...miss, of: ({ oldTapeMiss }) => oldTapeMiss },
];
