import type { LabelledPlace } from '../../sight/tape.ts';
import type { Field } from '../field.ts';

/** A tick, named by the number printed beside it. */
export const tickFields = (unit: 'yd' | 'm'): readonly Field<LabelledPlace>[] => [
  {
    key: 'range_m',
    datum: ({ range }) => range,
    name: 'range',
    symbol: unit,
    digits: 0,
    of: ({ label }) => label,
  },
  { key: 'along_m', name: 'along', unit: 'mm', digits: 3, of: ({ along }) => along },
];
