import { byLength, type Field } from '../field.ts';
import type { BetweenHit, PinFound } from './findings.ts';

/** A pin: where it belongs, what it is on for, and the stretch over which it can be held dead on for a ring. */
export const pinFields = (ring: number): readonly Field<PinFound>[] => [
  { key: 'pin', name: 'pin', digits: 0, of: ({ pin }) => pin },
  { key: 'set_for_m', name: 'set for', unit: 'range', digits: 0, of: ({ setFor }) => setFor },
  { key: 'down_m', name: 'down', unit: 'mm', digits: 2, of: ({ below }) => below },
  { name: 'the same', unit: 'thou', digits: 0, of: ({ below }) => below },
  { key: 'range_m', name: 'on for', unit: 'range', digits: 1, of: ({ range }) => range },
  { key: 'shot', datum: ({ shot }) => shot, of: () => null },
  { name: 'from', unit: 'range', digits: 1, of: ({ from }) => from },
  { name: 'to', unit: 'range', digits: 1, of: ({ to }) => to },
  {
    key: 'dead_on',
    datum: ({ from, to }) => ({ ring_m: ring, from_m: from, to_m: to }),
    of: () => null,
  },
];

/** A hit between pins. */
export const BETWEEN_FIELDS: readonly Field<BetweenHit>[] = [
  { key: 'range_m', name: 'range', unit: 'range', digits: 0, of: ({ range }) => range },
  { key: 'pin', name: 'pin', digits: 0, of: ({ pin }) => pin },
  { key: 'height_m', name: 'hits', unit: 'smallLength', digits: byLength(1, 0), of: ({ height }) => height },
];
