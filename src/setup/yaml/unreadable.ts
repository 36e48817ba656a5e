import type { Words } from './yaml-errors.ts';

/** Signs that mean something to the reader of sections and lists; each takes it some memory, and a wrong one much of it. */
const SIGNS = /[[\]{},:"'?&*!]/;
/** Fifteen thousand hits written as pairs have as many, and nobody measures those. */
const MOST_SIGNS = 60_000;
/** A setup has four levels; a bracket in a note may stand alone. */
const MOST_OPEN = 500;

export const TOO_DEEP: Words = {
  reason: 'sections are nested too deep',
  allowed: 'sections at most four deep',
  write: 'Remove the extra levels',
};

/** Why a text is not worth reading as sections and lists, seen before that is tried; null for one that is. */
export function unreadable(text: string): Words | null {
  let [open, signs] = [0, 0];
  for (const sign of text) {
    if (!SIGNS.test(sign)) continue;
    signs += 1;
    if (sign === '[' || sign === '{') open += 1;
    if ((sign === ']' || sign === '}') && open > 0) open -= 1;
    if (open > MOST_OPEN) return TOO_DEEP;
  }
  if (signs <= MOST_SIGNS) return null;
  return {
    reason: `has ${signs} brackets, commas, colons and quotation marks`,
    allowed: `at most ${MOST_SIGNS}`,
    write: 'Give the name of a setup file',
  };
}
