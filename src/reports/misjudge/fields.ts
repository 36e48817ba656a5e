import type { HitChance } from '../../advice/range/hit-chance.ts';
import type { GuessRoom } from '../../advice/range/misjudge.ts';
import { byLength, exactRanges, type Field, through } from '../field.ts';
import type { MisjudgeRow } from './findings.ts';

const ROOM_FIELDS: readonly Field<GuessRoom>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: exactRanges, of: ({ range }) => range },
  { key: 'short_m', name: 'short', unit: 'range', digits: 1, of: ({ short }) => short },
  { key: 'long_m', name: 'long', unit: 'range', digits: 1, of: ({ long }) => long },
  {
    key: 'height_per_guess',
    name: 'height, a step off',
    unit: 'smallLength',
    per: 'range',
    digits: byLength(2, 0),
    of: ({ heightPerGuess }) => heightPerGuess,
  },
];

const CHANCE_FIELDS: readonly Field<HitChance>[] = [
  { key: 'hit_chance', name: 'hits', unit: '%', digits: 0, of: ({ chance }) => chance },
  {
    key: 'hit_chance_range_known',
    name: 'range known',
    unit: '%',
    digits: 0,
    of: ({ without }) => without.guess,
  },
  { key: 'hit_chance_level', name: 'held level', unit: '%', digits: 0, of: ({ without }) => without.cant },
  { key: 'hit_chance_calm', name: 'no gusts', unit: '%', digits: 0, of: ({ without }) => without.wind },
];

export const MISJUDGE_FIELDS: readonly Field<MisjudgeRow>[] = [
  ...through(ROOM_FIELDS, ({ room }: MisjudgeRow) => room),
  ...through(CHANCE_FIELDS, ({ hit }: MisjudgeRow) => hit),
];
