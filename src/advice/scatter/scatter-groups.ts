import { floatAt } from '../../numerics/at.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, type Ratio, si } from '../../quantities/quantity.ts';
import { CAUSES, type Cause } from './scatter-causes.ts';

/** How hits at one range lie. */
export interface Spread {
  readonly lateralSd: Metres;
  readonly verticalSd: Metres;
  /** Mean, over groups of the asked size, of the largest distance between two hits. */
  readonly group: Metres;
}

export interface RangeScatter extends Spread {
  readonly range: Metres;
  readonly causes: readonly CauseScatter[];
  /** Variance that the causes one at a time do not add up to, over the whole: what they do to one another, and chance. */
  readonly together: Ratio;
}

/** One cause as if nothing else varied. */
export interface CauseScatter extends Spread {
  readonly cause: Cause;
  /** Of the sum of the causes' variances. */
  readonly share: Ratio;
}

/** Hits of many arrows at some ranges: height and lateral position in turn, range by range, arrow by arrow. */
export interface Hits {
  readonly all: Float64Array;
  readonly alone: Readonly<Record<Cause, Float64Array>>;
}

/**
 * Group sizes by range, and what share of each is whose.
 *
 * @param groupSize arrows in a group, 2 or more; arrows left over from the last whole group count for the standard
 *   deviations alone
 * @throws DomainError for groups of fewer than 2, or fewer arrows than one group
 */
export function scatterByRange(
  hits: Hits,
  ranges: readonly Metres[],
  groupSize: number,
): readonly RangeScatter[] {
  const arrows = hits.all.length / (2 * ranges.length);
  if (!(Number.isInteger(groupSize) && groupSize >= 2))
    throw new DomainError('arrows in a group', groupSize, 'a whole number, 2 or more');
  if (!(arrows >= groupSize)) throw new DomainError('arrows', arrows, `at least one group of ${groupSize}`);
  return ranges.map((range, i) => {
    const spreadOf = (flat: Float64Array): Spread => spread(flat, ranges.length, i, groupSize);
    const whole = spreadOf(hits.all);
    const alone = CAUSES.map((cause) => ({ cause, ...spreadOf(hits.alone[cause]) }));
    const sum = alone.reduce((total, one) => total + variance(one), 0);
    return {
      range,
      ...whole,
      causes: alone.map((one) => ({ ...one, share: si(sum === 0 ? 0 : variance(one) / sum) })),
      together: si(variance(whole) === 0 ? 0 : 1 - sum / variance(whole)),
    };
  });
}

const variance = ({ lateralSd, verticalSd }: Spread): number => lateralSd ** 2 + verticalSd ** 2;

/**
 * How the hits at one range lie.
 *
 * @param flat height and lateral position in turn, range by range, arrow by arrow
 * @param ranges how many ranges there are, `index` the one asked about
 */
export function spread(flat: Float64Array, ranges: number, index: number, groupSize: number): Spread {
  const arrows = flat.length / (2 * ranges);
  const height = (arrow: number): number => floatAt(flat, 2 * (arrow * ranges + index));
  const lateral = (arrow: number): number => floatAt(flat, 2 * (arrow * ranges + index) + 1);
  const groups = Math.floor(arrows / groupSize);
  let total = 0;
  for (let g = 0; g < groups; g++)
    total += extremeSpread(height, lateral, g * groupSize, (g + 1) * groupSize);
  return {
    lateralSd: si(standardDeviation(lateral, arrows)),
    verticalSd: si(standardDeviation(height, arrows)),
    group: si(total / groups),
  };
}

function standardDeviation(value: (i: number) => number, count: number): number {
  let mean = 0;
  for (let i = 0; i < count; i++) mean += value(i) / count;
  let sum = 0;
  for (let i = 0; i < count; i++) sum += (value(i) - mean) ** 2;
  return Math.sqrt(sum / (count - 1));
}

/** The largest distance between two hits of the arrows from `first` to before `end`. */
function extremeSpread(
  height: (i: number) => number,
  lateral: (i: number) => number,
  first: number,
  end: number,
): number {
  let largest = 0;
  for (let a = first; a < end; a++)
    for (let b = a + 1; b < end; b++)
      largest = Math.max(largest, (height(a) - height(b)) ** 2 + (lateral(a) - lateral(b)) ** 2);
  return Math.sqrt(largest);
}
