import { at } from '../numerics/at.ts';

/** Words longer than this are not slips of the finger, and comparing them would take long. */
const LONGEST_WORD = 40;

/**
 * Insertions, deletions, substitutions and swaps of neighbours that turn one word into the other, upper case aside.
 *
 * @source F. J. Damerau, A technique for computer detection and correction of spelling errors, Communications of the ACM 7
 * (1964) 171; the restricted form, in which no part is edited twice
 */
export function editDistance(first: string, second: string): number {
  const a = [...first.toLowerCase()];
  const b = [...second.toLowerCase()];
  let beforePrevious: number[] = [];
  let previous = [...b.keys(), b.length];
  for (const [i, charA] of a.entries()) {
    const row = [i + 1];
    for (const [j, charB] of b.entries()) {
      const change = at(previous, j) + (charA === charB ? 0 : 1);
      const insert = at(row, j) + 1;
      const remove = at(previous, j + 1) + 1;
      const swapped = i > 0 && j > 0 && charA === b[j - 1] && a[i - 1] === charB;
      const swap = swapped ? at(beforePrevious, j - 1) + 1 : Number.POSITIVE_INFINITY;
      row.push(Math.min(change, insert, remove, swap));
    }
    beforePrevious = previous;
    previous = row;
  }
  return at(previous, b.length);
}

/** The known word a slip of the finger away from `word`, or undefined: at most one edit for every three letters. */
export function nearestWord(word: string, known: readonly string[]): string | undefined {
  if (word.length > LONGEST_WORD) return undefined;
  const near = known
    .map((candidate) => ({ candidate, distance: editDistance(word, candidate) }))
    .filter(({ candidate, distance }) => distance <= Math.max(1, Math.max(word.length, candidate.length) / 3))
    .filter(({ candidate, distance }) => distance < candidate.length)
    .toSorted((first, second) => first.distance - second.distance);
  return near[0]?.candidate;
}
