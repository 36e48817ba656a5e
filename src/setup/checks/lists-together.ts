import { at } from '../../numerics/at.ts';
import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** What to say of lists that hold too much, from how many entries there are in the longest and in all. */
type Told = (longest: number, total: number) => Pick<Fault, 'reason' | 'allowed' | 'write'>;

/** A fault where lists together have more than so many entries, told at the longest of them. */
export function togetherTooLong(
  { count }: Draft,
  lists: readonly KeyPath[],
  most: number,
  told: Told,
): readonly Fault[] {
  const total = lists.reduce((sum, list) => sum + count(list), 0);
  if (total <= most) return [];
  const longest = at(
    lists.toSorted((a, b) => count(b) - count(a)),
    0,
  );
  return [{ path: longest, at: 'key', ...told(count(longest), total) }];
}
