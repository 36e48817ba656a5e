/** Rows of a table that a screen holds beside everything else. */
const MOST_ROWS = 20;
/** Steps of the unit shown that a person counts in. */
const ROUND_STEPS = [1, 2, 5, 10, 20, 50, 100];
const ROUNDING_LEFT = 1e-6;

/**
 * Rows by range for a screen: those at multiples of the smallest round step that leaves few enough; all when none does.
 *
 * @param at the range of a row in the unit shown
 */
export function shortRows<Row>(
  rows: readonly Row[],
  at: (row: Row) => number,
  most = MOST_ROWS,
): readonly Row[] {
  if (rows.length <= most) return rows;
  const isAt = (step: number) => (row: Row) =>
    Math.abs(at(row) / step - Math.round(at(row) / step)) < ROUNDING_LEFT;
  for (const step of ROUND_STEPS) {
    const kept = rows.filter(isAt(step));
    if (kept.length > 0 && kept.length <= most) return kept;
  }
  return rows;
}
