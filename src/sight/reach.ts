import { flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { NumericalError, unlessNumericalError } from '../numerics/numerical-error.ts';
import type { Metres } from '../quantities/quantity.ts';
import { NO_PIN } from './no-pin.ts';
import type { Rig } from './rig.ts';
import { pinForHit } from './zero.ts';

/** How far the arrow gets of the ranges asked for. */
export interface Reach {
  /** The first of the ranges that nothing was solved for; null when all were. */
  readonly beyond: Metres | null;
  /** Whether some pin hits there all the same, though not in every shot that was asked about. */
  readonly isHit: boolean;
}

/** What was solved for the ranges that the arrow gets to. */
export interface Reached<T> extends Reach {
  readonly solved: T;
}

/**
 * Solve for all the rising ranges (m), or, where the arrow cannot get to the last of them with any pin, or not in every shot
 * that is asked about (against the wind, uphill), for those it gets to.
 *
 * @throws NumericalError when it gets to none of them, or when it gets to all and something else is wrong
 */
export function asFarAsItGoes<T>(
  rig: Rig,
  ranges: readonly Metres[],
  solve: (reached: readonly Metres[]) => T,
): Reached<T> {
  try {
    return { solved: solve(ranges), beyond: null, isHit: true };
  } catch (error) {
    if (!(error instanceof NumericalError)) throw error;
    const count = countReached(rig, ranges);
    if (count === 0 || (count === ranges.length && !fallsShort(error))) throw error;
    return lastSolved(ranges, count, solve, error);
  }
}

/** Whether an error says that an arrow does not get there, and nothing else. */
const fallsShort = ({ code, reason }: NumericalError): boolean =>
  reason === NO_PIN || code === 'too-many-evaluations' || code === 'non-finite';

/** The most ranges, up to a count that some pin hits, that can be solved together. */
function lastSolved<T>(
  ranges: readonly Metres[],
  count: number,
  solve: (reached: readonly Metres[]) => T,
  error: NumericalError,
): Reached<T> {
  const solvedOr = (most: number): Reached<T> | null =>
    unlessNumericalError(() => ({
      solved: solve(ranges.slice(0, most)),
      beyond: at(ranges, most),
      isHit: most < count,
    }));
  const likely = farthestWithFirst(ranges, Math.min(count, ranges.length - 1), solve);
  const whole = likely === 0 ? null : solvedOr(likely);
  if (whole !== null) return whole;
  const reached: Reached<T>[] = [];
  farthestOf(Math.max(likely, 1) - 1, (most) => {
    const found = solvedOr(most);
    if (found !== null) reached.push(found);
    return found !== null;
  });
  const last = reached.at(-1);
  if (last === undefined) throw error;
  return last;
}

/** How many ranges there are up to the farthest that can be solved together with the first: the others hardly ever matter. */
const farthestWithFirst = (
  ranges: readonly Metres[],
  most: number,
  solve: (reached: readonly Metres[]) => unknown,
): number =>
  farthestOf(
    most,
    (count) =>
      unlessNumericalError(() => [solve([...new Set([at(ranges, 0), at(ranges, count - 1)])])]) !== null,
  );

/** How many of the rising ranges some pin hits. */
function countReached(rig: Rig, ranges: readonly Metres[]): number {
  const flight = flyer(rig.conditions);
  return farthestOf(
    ranges.length,
    (count) => unlessNumericalError(() => pinForHit(rig, at(ranges, count - 1), 0, flight)) !== null,
  );
}

/** The last of the numbers from 1 to `most` that is reached, where all before it are, or 0: by halving. */
export function farthestOf(most: number, isReached: (count: number) => boolean): number {
  let [reached, missed] = [0, most + 1];
  while (missed - reached > 1) {
    const middle = (reached + missed) >> 1;
    if (isReached(middle)) reached = middle;
    else missed = middle;
  }
  return reached;
}
