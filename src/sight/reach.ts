import { flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import type { Metres } from '../quantities/quantity.ts';
import type { Rig } from './rig.ts';
import { pinForHit } from './zero.ts';

/** What was solved for the ranges that the arrow gets to. */
export interface Reached<T> {
  readonly solved: T;
  /** The first of the ranges that no pin hits; null when all are hit. */
  readonly beyond: Metres | null;
}

/**
 * Solve for all the rising ranges (m), or, where the arrow cannot get to the last of them with any pin, for those it gets to.
 *
 * @throws NumericalError when it gets to none of them, or when it gets to all and something else is wrong
 */
export function asFarAsItGoes<T>(
  rig: Rig,
  ranges: readonly Metres[],
  solve: (reached: readonly Metres[]) => T,
): Reached<T> {
  try {
    return { solved: solve(ranges), beyond: null };
  } catch (error) {
    if (!(error instanceof NumericalError)) throw error;
    const count = countReached(rig, ranges);
    const beyond = ranges[count];
    if (count === 0 || beyond === undefined) throw error;
    return lastSolved(ranges, count, solve, error);
  }
}

/**
 * The most ranges, up to a count, that can be solved together. Near the farthest range that any pin hits, pins that are read from
 * paths they share are not found any more, though each is by itself.
 */
function lastSolved<T>(
  ranges: readonly Metres[],
  count: number,
  solve: (reached: readonly Metres[]) => T,
  error: NumericalError,
): Reached<T> {
  const solvedOr = (most: number): Reached<T> | null =>
    orNull(() => ({ solved: solve(ranges.slice(0, most)), beyond: at(ranges, most) }));
  const whole = solvedOr(count);
  if (whole !== null) return whole;
  const reached: Reached<T>[] = [];
  farthestOf(count - 1, (most) => {
    const found = solvedOr(most);
    if (found !== null) reached.push(found);
    return found !== null;
  });
  const last = reached.at(-1);
  if (last === undefined) throw error;
  return last;
}

/** Null for what cannot be computed. */
function orNull<T>(compute: () => T): T | null {
  try {
    return compute();
  } catch (error) {
    if (error instanceof NumericalError) return null;
    throw error;
  }
}

/** How many of the rising ranges some pin hits. */
function countReached(rig: Rig, ranges: readonly Metres[]): number {
  const flight = flyer(rig.conditions);
  return farthestOf(
    ranges.length,
    (count) => orNull(() => pinForHit(rig, at(ranges, count - 1), 0, flight)) !== null,
  );
}

/** The last of the numbers from 1 to `most` that is reached, where all before it are, or 0: by halving. */
function farthestOf(most: number, isReached: (count: number) => boolean): number {
  let [reached, missed] = [0, most + 1];
  while (missed - reached > 1) {
    const middle = (reached + missed) >> 1;
    if (isReached(middle)) reached = middle;
    else missed = middle;
  }
  return reached;
}
