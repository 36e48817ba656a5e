import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';
import { togetherTooLong } from './lists-together.ts';

/**
 * So many measurements are fitted in seconds; beyond, what they have in common takes a time that grows with the square of their
 * number and the cube. Nobody sights in with more: arrows shot alike are one mark.
 */
const MOST_MEASUREMENTS = 300;

const LISTS = ['marks', 'speeds', 'drops'] as const;

/** More marks, speeds and drops, the days' among them, than a fit is made of: told at the longest list. */
export function measurementCountFaults(draft: Draft): readonly Fault[] {
  const days = Array.from({ length: draft.count(['days']) }, (_, day): KeyPath => ['days', day]);
  const lists = [[], ...days].flatMap((section) => LISTS.map((list): KeyPath => [...section, list]));
  return togetherTooLong(draft, lists, MOST_MEASUREMENTS, (longest, total) => ({
    reason: `has ${longest} entries${total === longest ? '' : ` of the ${total} marks, speeds and drops`}`,
    allowed: `${MOST_MEASUREMENTS} marks, speeds and drops together`,
    write:
      'Write groups shot at one range with one setting as a single mark with all their arrows, or remove the oldest',
  }));
}
