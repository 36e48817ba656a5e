import process from 'node:process';
import type { OpenSetup } from '../../src/setup/open.ts';
import { MOST_KEPT, type Problem, SetupError } from '../../src/setup/problem.ts';

/** A reader takes some milliseconds; what takes this long of the processor alone, s, is no answer. */
const LONGEST_READING = 2;
/** The same for the fit of marks that no bow is of, s: it looks for what is wrong with them, which takes a second. */
export const LONGEST_FIT = 5;

/** No sentence of the reader is longer without what it quotes, characters: the longest lists every key of a section. */
const LONGEST_MESSAGE = 900;
/** Of what stood in the file, characters. */
const LONGEST_ECHO = 200;

/** What must not be printed: line ends, what a terminal obeys, and the words of a program that lost its way. */
const NO_LINE = /[\n\r\u0085\u2028\u2029]/;
const ASTRAY = /\bundefined\b|\[object |\bNaN\b|\bInfinity\b/;
/** The same in a file, where it may stand in the middle of a word until it is cut. */
export const GIVEN = /undefined|\[object |NaN|Infinity/;

/** What is wrong with the way in which something was read or answered: a fault of ours, whatever was given. */
export class Astray extends Error {}

/**
 * Runs a piece of work. The clock is asked first, as that costs less; a busy machine has it done once more, by the processor's
 * own count.
 *
 * @throws Astray when it takes longer of the processor than allowed, s
 */
function inTime<T>(allowed: number, work: () => T): T {
  const start = performance.now();
  const result = work();
  if (performance.now() - start <= 1000 * allowed) return result;
  const before = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(before);
  const taken = (user + system) / 1e6;
  if (taken > allowed) throw new Astray(`it took ${taken.toFixed(1)} s`);
  return result;
}

/**
 * Opens a text as a setup.
 *
 * @returns the setup; null for a text that is refused with problems that are complete
 * @throws Astray for anything else
 */
export function readOrRefused<T = OpenSetup>(
  text: string,
  open: (text: string, name: string) => T,
  allowed = LONGEST_READING,
): T | null {
  return inTime(allowed, () => {
    try {
      return open(text, 'setup.yaml');
    } catch (error) {
      if (!(error instanceof SetupError)) throw error;
      complete(error, text);
      return null;
    }
  });
}

/** @throws Astray for problems that do not say all that is needed to put them right */
export function complete(error: SetupError, text: string): void {
  const { problems, count } = error;
  const says = (wrong: string): Astray => new Astray(`${wrong}: ${error.message.slice(0, 2000)}`);
  if (problems.length === 0 || problems.length > MOST_KEPT || count < problems.length)
    throw says('no problem');
  const lines = text.split('\n').length;
  for (const problem of problems) {
    const wrong = wrongWith(problem, lines, text);
    if (wrong !== null) throw says(`${wrong} in ${JSON.stringify(problem).slice(0, 1000)}`);
  }
}

function wrongWith(problem: Problem, lines: number, text: string): string | null {
  const { line, column, path, found, allowed, write, message } = problem;
  if (!(Number.isInteger(line) && line >= 1 && line <= lines)) return 'a line that is none';
  if (!(Number.isInteger(column) && column >= 1)) return 'a column that is none';
  if (!message.startsWith(`setup.yaml:${line}:${column}  `)) return 'no place';
  if (allowed.trim() === '' || write.trim() === '') return 'no advice';
  if (NO_LINE.test(message)) return 'more than one line';
  if (message.length > LONGEST_MESSAGE) return 'a message without an end';
  if (found.length > LONGEST_ECHO || path.length > LONGEST_ECHO) return 'an echo without an end';
  if (ASTRAY.test(message) && !GIVEN.test(text)) return 'words of a program';
  return null;
}
