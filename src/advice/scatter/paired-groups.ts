import type { Metres } from '../../quantities/quantity.ts';
import { si } from '../../quantities/quantity.ts';
import type { Difference } from '../builds/comparison.ts';
import { REAL } from '../builds/comparison.ts';
import { spread } from './scatter-groups.ts';

/** Group size of one build at one range, and how it differs from the base's. */
export interface PairedGroup {
  readonly group: Metres;
  readonly difference: Difference;
}

/**
 * Mean group sizes of two builds shot with the same random differences, group by group, so that most of chance cancels.
 *
 * @param base  hits of the base: height and lateral position in turn, range by range, arrow by arrow
 * @param other hits of the other build, of as many arrows with the same numbers
 * @param ranges how many ranges the hits have
 */
export function pairedGroups(
  base: Float64Array,
  other: Float64Array,
  ranges: number,
  groupSize: number,
): readonly PairedGroup[] {
  const stretch = 2 * ranges * groupSize;
  const count = Math.floor(Math.min(base.length, other.length) / stretch);
  const sizeOf = (hits: Float64Array, group: number, range: number): number =>
    spread(hits.subarray(group * stretch, (group + 1) * stretch), ranges, range, groupSize).group;
  return Array.from({ length: ranges }, (_, range) => {
    const pairs = Array.from(
      { length: count },
      (_, g) => [sizeOf(base, g, range), sizeOf(other, g, range)] as const,
    );
    const mean = (of: (pair: readonly [number, number]) => number): number =>
      pairs.reduce((sum, pair) => sum + of(pair), 0) / count;
    const value = mean(([a, b]) => b - a);
    const variance = mean(([a, b]) => (b - a - value) ** 2) / Math.max(1, count - 1);
    const sd = Math.sqrt(variance);
    return {
      group: si(mean(([, b]) => b)),
      difference: { value, sd, real: Math.abs(value) > REAL * sd, mostly: sd > 0 ? 'chance' : null },
    };
  });
}
