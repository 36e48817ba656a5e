import { DomainError } from '../quantities/domain-error.ts';
import { type Metres, si } from '../quantities/quantity.ts';

/**
 * Mean extreme spread (largest distance between two of n hits) of a circular normal group, over its standard deviation in one
 * direction, n = 2, 3, ... 20.
 *
 * @source Grubbs, Statistical Measures of Accuracy for Riflemen and Missile Engineers, 1964, table 2, from memory; a test
 *   repeats it by simulation to 1 %
 */
const EXTREME_SPREAD = [
  1.772, 2.406, 2.787, 3.066, 3.277, 3.443, 3.582, 3.699, 3.799, 3.887, 3.968, 4.037, 4.1, 4.162, 4.217,
  4.269, 4.315, 4.359, 4.401,
] as const;

/** How many degrees of freedom the usual spread of a single arrow counts for beside a group's own: two more arrows. */
const PRIOR_FREEDOM = 4;

export interface GroupShot {
  readonly range: Metres;
  readonly arrows: number;
  /** Extreme spread between arrow centres; null when it was not measured. */
  readonly group: Metres | null;
  /** Usual standard deviation of one arrow per metre of range, in one direction. */
  readonly arrowSdPerRange: number;
}

/**
 * Standard deviation of one arrow in one direction, m: the group's own, drawn towards the usual one as far as few arrows say
 * little. A group of n arrows has 2(n − 1) degrees of freedom.
 *
 * @throws DomainError for a group of one arrow with a spread
 */
export function arrowSd({ range, arrows, group, arrowSdPerRange }: GroupShot): Metres {
  const usual = arrowSdPerRange * range;
  if (group === null) return si(usual);
  const factor = EXTREME_SPREAD[Math.min(arrows, EXTREME_SPREAD.length + 1) - 2];
  if (factor === undefined) throw new DomainError('arrows', arrows, 'at least 2 when a group is given');
  const freedom = 2 * (arrows - 1);
  const own = group / factor;
  return si(Math.sqrt((PRIOR_FREEDOM * usual * usual + freedom * own * own) / (PRIOR_FREEDOM + freedom)));
}

/** Standard uncertainty of the centre of the group, in one direction. */
export const groupCentreSd = (shot: GroupShot): Metres => si(arrowSd(shot) / Math.sqrt(shot.arrows));
