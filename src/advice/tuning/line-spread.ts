import { at } from '../../numerics/at.ts';
import { varianceRatioQuantile, varianceRatioSurvival } from '../../numerics/quantiles.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { type ChanceOfGain, chanceOfGain } from './line-chance.ts';
import { devianceAt, type GridPoint, type PlaceSpread, spreadGrid } from './line-grid.ts';
import { sumOf } from './sample.ts';

type LineVerdict = 'more positions' | 'not shown' | 'beyond the span' | 'one-sided' | 'best';

export interface LineSpread {
  readonly verdict: LineVerdict;
  /** By position, rising. */
  readonly groups: readonly { readonly position: Metres; readonly sd: Metres; readonly freedom: number }[];
  readonly pooledSd: Metres;
  /** How much better a best place explains the groups than one spread for all; null below three positions. */
  readonly gain: number | null;
  /** How often as much comes of chance alone, when the rest does not matter; null with one position. */
  readonly chanceAlone: number | null;
  /** Null where every place explains the groups alike. */
  readonly bestPosition: Metres | null;
  /** 19 times in 20; an end that is open is where the search ended. */
  readonly interval: readonly [Metres, Metres] | null;
  readonly openBelow: boolean;
  readonly openAbove: boolean;
  /** Off the best place by which the variance has doubled. */
  readonly doubling: Metres | null;
  readonly now: { readonly position: Metres; readonly growth: number; readonly growthAtMost: number } | null;
  readonly tightest: Metres;
  readonly shootNext: readonly Metres[];
  /** Two positions: standard deviation at the second over that at the first, and its interval. */
  readonly ratio: { readonly value: number; readonly interval: readonly [number, number] } | null;
  readonly done: boolean;
}

/** The 95 % point of chi squared with one degree of freedom. */
const WITHIN = 3.841;
/** Chance below which a best place counts as shown. */
const SHOWN_BELOW = 0.05;
/** A place that would make the group smaller by less is not worth looking for. */
const WORTH_FINDING = 0.05;
/** A rest goes no farther from the middle: 3/16 in. */
const FARTHEST = 4.7625e-3;

/** At the middle of three and more places, where a first look goes: the ends of twice the span. */
const WIDER = 1;

/**
 * Where the rest groups best square to a line, from the spread of the arrows at several places of the rest.
 *
 *   σ²(p) = a (1 + r (p − p0)²)
 *
 * @param places pooled by position, rising
 * @param present where the rest stands now
 * @param chance  what chance alone gains with that many arrows at those places; handed in where it is asked about many times
 */
export function lineSpread(
  places: readonly PlaceSpread[],
  present: number,
  chance: ChanceOfGain = chanceOfGain(places),
): LineSpread {
  const freedoms = places.map(({ freedom }) => freedom);
  const variances = places.map(({ variance }) => variance);
  const total = sumOf(freedoms);
  const pooled = sumOf(variances.map((variance, j) => variance * at(freedoms, j))) / total;
  const tightest = places.reduce((best, place) => (place.variance < best.variance ? place : best));
  const common = {
    groups: places.map(({ position, variance, freedom }) => ({
      position: si<'m'>(position),
      sd: si<'m'>(Math.sqrt(variance)),
      freedom,
    })),
    pooledSd: si<'m'>(Math.sqrt(pooled)),
    tightest: si<'m'>(tightest.position),
  };
  if (places.length < LEAST_PLACES) return { ...common, ...fewPlaces(places) };
  const grid = spreadGrid(places);
  const deviances = grid.map((point) => devianceAt(point, variances, freedoms));
  const least = Math.min(...deviances);
  const gain = total * Math.log(pooled) - least;
  const best = at(grid, deviances.indexOf(least));
  const within = grid.filter((_, i) => at(deviances, i) - least <= WITHIN);
  const chanceAlone = chance(gain);
  const [low, high] = [Math.min(...within.map(placeOf)), Math.max(...within.map(placeOf))];
  const openBelow = low === at(grid, 0).place;
  const openAbove = high === at(grid, grid.length - 1).place;
  const growthOf = ({ curvature, place }: GridPoint): number =>
    Math.sqrt(1 + curvature * (present - place) ** 2) - 1;
  const growthAtMost = Math.max(...within.map(growthOf));
  const [first, last] = [at(places, 0).position, at(places, places.length - 1).position];
  const verdict = verdictOf(chanceAlone, best.place, [first, last], openBelow || openAbove);
  const inside = present >= low && present <= high;
  return {
    ...common,
    verdict,
    gain,
    chanceAlone,
    bestPosition: best.curvature === 0 ? null : si(best.place),
    interval: [si(low), si(high)],
    openBelow,
    openAbove,
    doubling: best.curvature === 0 ? null : si(1 / Math.sqrt(best.curvature)),
    now: { position: si(present), growth: growthOf(best), growthAtMost },
    shootNext: nextPlaces(verdict, [first, last], { openBelow, best: best.place }).map((p) => si<'m'>(p)),
    ratio: null,
    done: growthAtMost < WORTH_FINDING || (verdict === 'best' && inside),
  };
}

const LEAST_PLACES = 3;
const placeOf = ({ place }: GridPoint): number => place;

function verdictOf(
  chance: number,
  best: number,
  [first, last]: readonly [number, number],
  open: boolean,
): LineVerdict {
  if (chance >= SHOWN_BELOW) return 'not shown';
  if (best < first || best > last) return 'beyond the span';
  return open ? 'one-sided' : 'best';
}

/** Where six arrows each would tell most. */
function nextPlaces(
  verdict: LineVerdict,
  [first, last]: readonly [number, number],
  { openBelow, best }: { readonly openBelow: boolean; readonly best: number },
): readonly number[] {
  const [middle, span] = [(first + last) / 2, last - first];
  const kept = (place: number): number =>
    Math.min(middle + Math.max(FARTHEST, span / 2), Math.max(middle - Math.max(FARTHEST, span / 2), place));
  if (verdict === 'not shown') return [kept(middle - WIDER * span), kept(middle + WIDER * span)];
  if (verdict === 'best') return [];
  const below = verdict === 'beyond the span' ? best < first : openBelow;
  return [kept(below ? first - span / 2 : last + span / 2)];
}

/** With one place nothing can be said; with two, how their spreads compare. */
function fewPlaces(places: readonly PlaceSpread[]) {
  const nothing = {
    verdict: 'more positions' as const,
    gain: null,
    bestPosition: null,
    interval: null,
    openBelow: true,
    openAbove: true,
    doubling: null,
    now: null,
    done: false,
  };
  const [first, second] = places;
  const middle = first === undefined ? 0 : first.position;
  if (first === undefined || second === undefined)
    return {
      ...nothing,
      chanceAlone: null,
      ratio: null,
      shootNext: [si<'m'>(middle - FARTHEST), si<'m'>(middle + FARTHEST)],
    };
  const F = second.variance / first.variance;
  const tail = varianceRatioSurvival(F, second.freedom, first.freedom);
  const low = varianceRatioQuantile(0.975, second.freedom, first.freedom);
  const high = varianceRatioQuantile(0.975, first.freedom, second.freedom);
  const between = (first.position + second.position) / 2;
  return {
    ...nothing,
    chanceAlone: 2 * Math.min(tail, 1 - tail),
    ratio: { value: Math.sqrt(F), interval: [Math.sqrt(F / low), Math.sqrt(F * high)] as const },
    shootNext: [si<'m'>(between)],
  };
}
