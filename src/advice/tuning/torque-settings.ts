import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import { meanOf, squaresAbout, sumOf } from './sample.ts';

/** Arrows shot with the bow torqued on purpose, at one extension of the sight and one range. */
export interface TorqueShots {
  readonly extension: Metres;
  readonly range: Metres;
  /** Hits, right positive, with the front of the bow turned left, and right. */
  readonly left: readonly Metres[];
  readonly right: readonly Metres[];
  /** To one side, where it was measured. */
  readonly turned: Radians | null;
}

/** What one extension showed. */
export interface TorqueSetting {
  readonly extension: Metres;
  readonly range: Metres;
  readonly leftMean: Metres;
  readonly rightMean: Metres;
  readonly arrowsLeft: number;
  readonly arrowsRight: number;
  /** From the shots turned left to those turned right; right positive. */
  readonly shift: Metres;
  readonly shiftSd: Metres;
  /** Whether the hits went with the torque (the sight stands too near), against it, or no farther than arrows scatter. */
  readonly moves: 'with' | 'against' | 'inside the group';
}

/** Share of Student's distribution for an interval that holds 19 times in 20. */
export const NOTICED = 0.975;
/** How unlike the torque of two shots is, as a share of it; assumed. */
const TORQUE_VARIES = 0.25;
/** What was known of the spread before counts for as much as so many degrees of freedom, as in one group of three. */
const PRIOR_FREEDOM = 4;
/** Half the mean extreme spread of three ordinary shots, in standard deviations of one. */
export const HALF_SPREAD_OF_THREE = 1.2;

/** Whether a shift is no larger than three ordinary shots spread. */
export const inside = ({ shift, range }: Pick<TorqueSetting, 'shift' | 'range'>, spread: number): boolean =>
  Math.abs(shift) / 2 <= HALF_SPREAD_OF_THREE * spread * range;

/** What every extension showed, with the arrows' own spread per metre of range and its degrees of freedom. */
export function torqueSettings(shots: readonly TorqueShots[], known: number) {
  const pooled = pooledShots(shots);
  const counted = sumOf(pooled.map(({ left, right }) => left.length + right.length - 2));
  const squares = sumOf(
    pooled.map(({ left, right, range }) => (squaresAbout(left) + squaresAbout(right)) / range ** 2),
  );
  const freedom = PRIOR_FREEDOM + counted;
  const spread = Math.sqrt((PRIOR_FREEDOM * known ** 2 + squares) / freedom);
  const settings = pooled.map(({ extension, range, left, right }): TorqueSetting => {
    const shift = si<'m'>(meanOf(right) - meanOf(left));
    const perShot = Math.hypot(spread, (TORQUE_VARIES * shift) / range / 2);
    return {
      extension,
      range,
      leftMean: si(meanOf(left)),
      rightMean: si(meanOf(right)),
      arrowsLeft: left.length,
      arrowsRight: right.length,
      shift,
      shiftSd: si(perShot * range * Math.sqrt(1 / left.length + 1 / right.length)),
      moves: movesOf({ shift, range }, spread),
    };
  });
  return { settings, spread, freedom };
}

function movesOf(seen: Pick<TorqueSetting, 'shift' | 'range'>, spread: number): TorqueSetting['moves'] {
  if (inside(seen, spread)) return 'inside the group';
  return seen.shift > 0 ? 'with' : 'against';
}

/** Shots at the same extension and range count as one, in the place of the latest of them. */
function pooledShots(shots: readonly TorqueShots[]): readonly TorqueShots[] {
  const pooled: TorqueShots[] = [];
  for (const shot of shots) {
    const same = pooled.findIndex(
      ({ extension, range }) => extension === shot.extension && range === shot.range,
    );
    const before = same < 0 ? undefined : pooled.splice(same, 1)[0];
    pooled.push(
      before === undefined
        ? shot
        : { ...shot, left: [...before.left, ...shot.left], right: [...before.right, ...shot.right] },
    );
  }
  return pooled;
}
