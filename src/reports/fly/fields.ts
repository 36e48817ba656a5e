import type { ShotRow } from '../../sight/shot.ts';
import { byLength, exactRanges, type Field } from '../field.ts';

/** A shot at one range. */
export const SHOT_FIELDS: readonly Field<ShotRow>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'time_s', name: 'time', unit: 'time', digits: 3, of: ({ time }) => time },
  { key: 'speed_mps', name: 'speed', unit: 'speed', digits: 1, of: ({ speed }) => speed },
  { key: 'drop_m', name: 'drop', unit: 'smallLength', digits: byLength(1, 0), of: ({ drop }) => drop },
  {
    key: 'height_m',
    name: 'height',
    unit: 'smallLength',
    digits: byLength(1, 0),
    of: ({ height }) => height,
  },
  {
    key: 'drift_m',
    name: 'drift',
    unit: 'smallLength',
    digits: byLength(3, 1),
    of: ({ lateral }) => lateral,
  },
  { key: 'spin_radps', name: 'spin', unit: 'spin', digits: 0, of: ({ spin }) => spin },
  { key: 'energy_J', name: 'energy', unit: 'energy', digits: 1, of: ({ energy }) => energy },
  { key: 'momentum_kgmps', name: 'momentum', unit: 'momentum', digits: 3, of: ({ momentum }) => momentum },
];
