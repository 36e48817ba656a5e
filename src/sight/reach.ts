import { flyer } from '../flight/trajectory.ts';
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
    return { solved: solve(ranges.slice(0, count)), beyond };
  }
}

/** How many of the rising ranges some pin hits, by halving. */
function countReached(rig: Rig, ranges: readonly Metres[]): number {
  const flight = flyer(rig.conditions);
  const isHit = (range: Metres): boolean => {
    try {
      pinForHit(rig, range, 0, flight);
      return true;
    } catch (error) {
      if (error instanceof NumericalError) return false;
      throw error;
    }
  };
  let [hit, missed] = [0, ranges.length + 1];
  while (missed - hit > 1) {
    const middle = (hit + missed) >> 1;
    const range = ranges[middle - 1];
    if (range !== undefined && isHit(range)) hit = middle;
    else missed = middle;
  }
  return hit;
}
