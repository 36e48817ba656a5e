import type { KeyPath } from '../key-path.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/**
 * So many measurements are fitted in seconds; beyond, what they have in common takes a time that grows with the square of their
 * number and the cube. Nobody sights in with more: arrows shot alike are one mark.
 */
const MOST_MEASUREMENTS = 300;

const LISTS = ['marks', 'speeds', 'drops'] as const;

/** More marks, speeds and drops, the days' among them, than a fit is made of: told at the longest list. */
export function measurementCountFaults({ count }: Draft): readonly Fault[] {
  const days = Array.from({ length: count(['days']) }, (_, day): KeyPath => ['days', day]);
  const lists = [[], ...days].flatMap((section) => LISTS.map((list): KeyPath => [...section, list]));
  const total = lists.reduce((sum, list) => sum + count(list), 0);
  const [longest] = lists.toSorted((a, b) => count(b) - count(a));
  if (total <= MOST_MEASUREMENTS || longest === undefined) return [];
  const whole = total === count(longest) ? '' : ` of the ${total} marks, speeds and drops`;
  return [
    {
      path: longest,
      at: 'key',
      reason: `has ${count(longest)} entries${whole}`,
      allowed: `${MOST_MEASUREMENTS} marks, speeds and drops together`,
      write:
        'Write groups shot at one range with one setting as a single mark with all their arrows, or remove the oldest',
    },
  ];
}
