import type { KeyPath } from '../key-path.ts';
import type { Fault } from './fault.ts';

/** Hits that are not written as pairs. */
export const notPairs = (path: KeyPath): Fault => ({
  path,
  at: 'value',
  reason: 'every hit is a pair of two lengths in brackets, first to the right and then high',
  allowed: 'pairs such as [0.4 in, -1.1 in], left and low with a minus',
  write: 'Write "hits: [[0.4 in, -1.1 in], [-0.2 in, 0.6 in]]"',
});
