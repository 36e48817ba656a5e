import type { PaperHole } from '../../advice/launch/paper-hole.ts';
import type { StartEffect } from '../../advice/launch/swing.ts';
import { type Field, through } from '../field.ts';
import { targetDigits } from '../side-words.ts';
import { MISS_FIELDS, type Miss } from '../start-misses.ts';
import { clockHour } from './words.ts';

/** What one start does to the flight as a whole. */
export const START_FIELDS: readonly Field<StartEffect>[] = [
  { key: 'name', name: 'start', of: ({ name }) => name },
  { key: 'largest_rad', name: 'largest', unit: 'deg', digits: 2, of: ({ largest }) => largest },
  { key: 'recovery_m', name: 'a tenth left after', unit: 'range', digits: 0, of: ({ recovery }) => recovery },
  {
    key: 'energy_lost_J',
    name: 'energy lost',
    unit: 'energy',
    digits: 3,
    of: ({ energyLost }) => energyLost,
  },
  { key: 'speed_lost_mps', name: 'speed lost', unit: 'speed', digits: 3, of: ({ speedLost }) => speedLost },
];

/** Something of a start: a miss, a hole. */
export interface OfStart<Part> {
  readonly start: string;
  readonly part: Part;
}

const ofStart = <Part>(fields: readonly Field<Part>[]): readonly Field<OfStart<Part>>[] => [
  { name: 'start', of: ({ start }) => start },
  ...through(fields, ({ part }: OfStart<Part>) => part),
];

export const START_MISS_FIELDS: readonly Field<OfStart<Miss>>[] = ofStart(MISS_FIELDS);

/** The hole in one sheet of paper. */
export const HOLE_FIELDS: readonly Field<PaperHole>[] = [
  { key: 'range_m', name: 'paper at', unit: 'range', digits: 0, of: ({ range }) => range },
  {
    key: 'nock_right_m',
    name: 'nock right',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ nockRight }) => nockRight,
  },
  {
    key: 'nock_high_m',
    name: 'nock high',
    unit: 'smallLength',
    digits: targetDigits,
    of: ({ nockHigh }) => nockHigh,
  },
  { key: 'tear_m', name: 'tear', unit: 'smallLength', digits: targetDigits, of: ({ length }) => length },
  {
    key: 'clockwise_rad',
    datum: ({ clockwise }) => clockwise,
    name: 'towards',
    symbol: "o'clock",
    of: ({ clockwise }) => clockHour(clockwise),
  },
];

export const START_HOLE_FIELDS: readonly Field<OfStart<PaperHole>>[] = ofStart(HOLE_FIELDS);
