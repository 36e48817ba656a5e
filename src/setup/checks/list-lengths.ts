import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';
import { togetherTooLong } from './lists-together.ts';
import { markPaths } from './mark-checks.ts';

/** Each day is flown in its own air; so many are a year of two evenings a week. */
const MOST_DAYS = 100;
/** A table read off a curve has a tenth of it. */
const MOST_DRAG_ROWS = 100;
/** Every arrow is held against all others of its group. */
const MOST_HITS = 60;
const MOST_HITS_IN_ALL = 1000;

/** Lists that would take minutes to compute with, and that nobody writes. */
export function listLengthFaults(draft: Draft): readonly Fault[] {
  const hits = markPaths(draft).map((mark): KeyPath => [...mark, 'hits']);
  const single = [
    tooLong(draft, ['days'], MOST_DAYS, 'Remove the oldest'),
    tooLong(draft, ['arrow', 'drag_coefficient'], MOST_DRAG_ROWS, 'Remove rows between the others'),
    ...hits.map((path) =>
      tooLong(draft, path, MOST_HITS, 'Write the arrows as several marks, or as arrows with group'),
    ),
  ].flat();
  if (single.length > 0) return single;
  return togetherTooLong(draft, hits, MOST_HITS_IN_ALL, (_, total) => ({
    reason: `is one of the lists that hold ${total} arrows one by one`,
    allowed: `${MOST_HITS_IN_ALL} in all`,
    write: 'Write older ones as arrows with group, lateral and vertical',
  }));
}

const tooLong = ({ count }: Draft, path: KeyPath, most: number, write: string): readonly Fault[] =>
  count(path) <= most
    ? []
    : [{ path, at: 'key', reason: `has ${count(path)} entries`, allowed: `at most ${most}`, write }];
