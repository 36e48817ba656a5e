/** "a", "a and b", "a, b and c". */
export const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join('') : `${parts.slice(0, -1).join(', ')} and ${parts.at(-1)}`;

/** A third of the way along a list, two thirds, and its last: what a first line tells of many rows. */
export function thirdsOf<Row>(rows: readonly Row[]): readonly Row[] {
  const picked = [1 / 3, 2 / 3, 1].map((share) => rows[Math.max(1, Math.round(share * rows.length)) - 1]);
  return [...new Set(picked.filter((row) => row !== undefined))];
}
