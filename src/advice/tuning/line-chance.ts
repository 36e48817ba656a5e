import { at, floatAt } from '../../numerics/at.ts';
import { varianceDraw } from '../../numerics/gamma-draw.ts';
import { once } from '../../numerics/once.ts';
import { randomStream } from '../../numerics/random.ts';
import { type GridPoint, type PlaceSpread, spreadGrid } from './line-grid.ts';
import { sumOf } from './sample.ts';

/** The share of evenings on which arrows that do not mind the rest gain at least as much by a best place, from 0 to 1. */
export type ChanceOfGain = (gain: number) => number;

const DRAWS = 2000;
const SEED = 14;
/** Beyond this gain chance alone comes to less than one evening in ten thousand, and drawing shows none. */
const BEYOND_CHANCE = { gain: 25, chance: 1e-4 } as const;

/** What sums of doubles leave of a gain of nothing. */
const ROUNDING = 1e-9;

/**
 * What a best place gains by chance alone, with as many arrows at each place: drawn when it is first asked, always alike.
 *
 * @param places their variances do not matter: the gain is the same for any spread
 */
export function chanceOfGain(places: readonly PlaceSpread[]): ChanceOfGain {
  const drawn = once(() => drawnGains(places));
  return (gain) =>
    gain > BEYOND_CHANCE.gain
      ? BEYOND_CHANCE.chance
      : drawn().reduce((count, each) => count + (each >= gain - ROUNDING ? 1 : 0), 0) / DRAWS;
}

function drawnGains(places: readonly PlaceSpread[]): Float64Array {
  const freedoms = places.map(({ freedom }) => freedom);
  const total = sumOf(freedoms);
  const stream = randomStream(SEED, 0);
  const weights = weightsOf(spreadGrid(places), freedoms);
  return Float64Array.from({ length: DRAWS }, () => {
    const variances = Float64Array.from(freedoms, (freedom) => varianceDraw(stream, freedom));
    const pooled = sumOf(freedoms.map((freedom, j) => freedom * floatAt(variances, j))) / total;
    return total * Math.log(pooled / least(weights, variances));
  });
}

/** For each pair what every variance counts for in exp(deviance/ν), in a row after one another. */
function weightsOf(grid: readonly GridPoint[], freedoms: readonly number[]): Float64Array {
  const total = sumOf(freedoms);
  return Float64Array.from(
    grid.flatMap(({ relative, logSum }) =>
      relative.map((h, j) => (at(freedoms, j) / total / h) * Math.exp(logSum / total)),
    ),
  );
}

/** The least exp(deviance/ν) of all pairs. */
function least(weights: Float64Array, variances: Float64Array): number {
  const count = variances.length;
  // Twenty-five million times: a test runner looks an imported name up at every call.
  const read = floatAt;
  let found = Number.POSITIVE_INFINITY;
  for (let start = 0; start < weights.length; start += count) {
    let sum = 0;
    for (let j = 0; j < count; j++) sum += read(weights, start + j) * read(variances, j);
    if (sum < found) found = sum;
  }
  return found;
}
