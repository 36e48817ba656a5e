import { at } from '../../src/numerics/at.ts';
import { NumericalError } from '../../src/numerics/numerical-error.ts';
import { type OpenSetup, openSetup } from '../../src/setup/open.ts';
import { ASKED, askedOrRefused } from './asked-or-refused.ts';
import { LONGEST_FIT, readOrRefused } from './read-or-refused.ts';

/**
 * Opens a text and asks it for marks and two questions more, in the units of one or the other system.
 *
 * @param turn which questions, counted round and round; `all` for every one of them
 * @returns how many were answered
 */
export async function openedAndAsked(text: string, turn: number | 'all'): Promise<number> {
  const setup = openedOrNull(text);
  if (setup === null) return 0;
  const turns = turn === 'all' ? ASKED.map((_, i) => i) : [0, turn, turn + 7];
  const units = turn !== 'all' && turn % 2 === 0 ? 'imperial' : 'metric';
  let answered = 0;
  for (const each of turns) {
    const [name, given] = at(ASKED, each % ASKED.length);
    if (await askedOrRefused(setup, name, given, units)) answered += 1;
  }
  return answered;
}

/** A setup; null for one that is refused, or whose marks cannot be fitted, which the door says in words. */
function openedOrNull(text: string): OpenSetup | null {
  try {
    return readOrRefused(text, openSetup, LONGEST_FIT);
  } catch (error) {
    if (error instanceof NumericalError) return null;
    throw error;
  }
}
