import { type GroupShot, PRIOR_FREEDOM, spreadFactor } from './group.ts';

/** A shift of this share of one arrow's standard deviation widens a group by 5 %, √(1 + 1/9): less goes unnoticed. */
export const NOTICED_SHARE = 1 / 3;

/**
 * Standard deviation of one arrow per metre of range, in one direction, from the archer's own groups; the usual one where no
 * group was measured.
 *
 * Groups are pooled by their 2(n − 1) degrees of freedom, and the usual spread counts for as many as in one group (group.ts):
 * three arrows say little, forty nearly all.
 */
export function ownSpread(groups: readonly Omit<GroupShot, 'arrowSdPerRange'>[], usual: number): number {
  const measured = groups.flatMap(({ range, arrows, group }) =>
    group === null ? [] : [{ freedom: 2 * (arrows - 1), perRange: group / spreadFactor(arrows) / range }],
  );
  const freedom = measured.reduce((sum, own) => sum + own.freedom, PRIOR_FREEDOM);
  const squares = measured.reduce(
    (sum, own) => sum + own.freedom * own.perRange ** 2,
    PRIOR_FREEDOM * usual ** 2,
  );
  return Math.sqrt(squares / freedom);
}
