import { arrowSd, type GroupShot } from './group.ts';

/** A shift of this share of one arrow's standard deviation widens a group by 5 %, √(1 + 1/9): less goes unnoticed. */
export const NOTICED_SHARE = 1 / 3;

/**
 * Standard deviation of one arrow per metre of range, in one direction, from the archer's own groups; the usual one where no
 * group was measured.
 *
 * Groups are pooled by their 2(n − 1) degrees of freedom. Each is first drawn towards the usual, as the fit of the marks does.
 */
export function ownSpread(groups: readonly GroupShot[], usual: number): number {
  const measured = groups.filter(({ group }) => group !== null);
  const freedom = measured.reduce((sum, { arrows }) => sum + 2 * (arrows - 1), 0);
  if (freedom === 0) return usual;
  const pooled = measured.reduce(
    (sum, shot) => sum + 2 * (shot.arrows - 1) * (arrowSd(shot) / shot.range) ** 2,
    0,
  );
  return Math.sqrt(pooled / freedom);
}
