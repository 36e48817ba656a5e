import type { Problem } from '../../../src/setup/problem.ts';
import { SetupError } from '../../../src/setup/problem.ts';
import { type Override, readSetup } from '../../../src/setup/read.ts';

/** The problems that a text is refused with; none when it is read. */
export function problemsOf(text: string, overrides: readonly Override[] = []): readonly Problem[] {
  try {
    readSetup(text, 'setup.yaml', overrides);
    return [];
  } catch (error) {
    if (error instanceof SetupError) return error.problems;
    throw error;
  }
}

/** The messages alone. */
export const messagesOf = (text: string): readonly string[] => problemsOf(text).map(({ message }) => message);

/** The path and the order of each problem. */
export const ordersOf = (text: string): readonly string[] =>
  problemsOf(text).map(({ path, write }) => `${path}: ${write}`);
