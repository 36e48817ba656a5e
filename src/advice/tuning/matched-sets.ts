import { at } from '../../numerics/at.ts';
import { type Kilograms, type Metres, si } from '../../quantities/quantity.ts';
import { meanOf, sampleSd, squaresAbout } from './sample.ts';

/** One arrow of the dozen. */
export interface MeasuredArrow {
  readonly mass: Kilograms;
  /** Where it hits by its own crookedness, root of the mean square over how it is nocked; 0 where the shaft was not measured. */
  readonly own: Metres;
}

/** Arrows that belong together. */
export interface ArrowSet {
  /** Positions in the list, from 0, rising. */
  readonly arrows: readonly number[];
  readonly massMean: Kilograms;
  readonly massSd: Kilograms;
  readonly massRange: Kilograms;
  /** Of the hits, by the masses. */
  readonly heightSd: Metres;
  readonly ownRms: Metres;
}

export interface MatchedSets {
  readonly sets: readonly ArrowSet[];
  readonly leftOver: readonly number[];
  readonly all: ArrowSet;
  /** What masses and crookedness of the whole list add to the archer's own group, as a share. */
  readonly groupGrowth: number;
}

export interface SortQuestion {
  readonly arrows: readonly MeasuredArrow[];
  readonly setSize: number;
  /** Change of the height of a hit for a kilogram more of arrow, m/kg. */
  readonly heightPerMass: number;
  /** Of one ordinary arrow at that range. */
  readonly arrowSd: Metres;
}

/** Centres that are tried as a start, even from the lightest arrow to the heaviest. */
const STARTS = 801;
/** Rounds in which a centre settles; it moves only when another arrow comes in. */
const MOST_ROUNDS = 50;

/**
 * The sets of arrows that group best, by their masses and by what each does alone: the set of the least sum of squares, then
 * the next from those that are left.
 *
 *   least Σ (b (m − mean))² + own²
 *
 * @checked unit: matched-sets.test.ts, against all 924 subsets of six in twelve
 */
export function matchedSets({ arrows, setSize, heightPerMass, arrowSd }: SortQuestion): MatchedSets {
  const sets: ArrowSet[] = [];
  let left = arrows.map((_, i) => i);
  while (left.length >= setSize) {
    const best = bestSet(arrows, left, setSize, heightPerMass);
    sets.push(setOf(arrows, best, heightPerMass));
    left = left.filter((i) => !best.includes(i));
  }
  const all = setOf(
    arrows,
    arrows.map((_, i) => i),
    heightPerMass,
  );
  return {
    sets,
    leftOver: left,
    all,
    groupGrowth: Math.hypot(1, all.heightSd / arrowSd, all.ownRms / arrowSd) - 1,
  };
}

/** For a centre the cheapest arrows are the best set, and for a set its mean the best centre. */
function bestSet(
  arrows: readonly MeasuredArrow[],
  from: readonly number[],
  size: number,
  b: number,
): readonly number[] {
  const mass = (i: number): number => at(arrows, i).mass;
  const own = (i: number): number => at(arrows, i).own;
  const masses = from.map(mass);
  const [low, high] = [Math.min(...masses), Math.max(...masses)];
  const cheapest = (centre: number): readonly number[] =>
    from
      .map((i) => ({ i, cost: (b * (mass(i) - centre)) ** 2 + own(i) ** 2 }))
      .toSorted((p, q) => p.cost - q.cost)
      .slice(0, size)
      .map(({ i }) => i);
  const costOf = (set: readonly number[]): number =>
    b * b * squaresAbout(set.map(mass)) + set.reduce((sum, i) => sum + own(i) ** 2, 0);
  let best = { set: cheapest(low), cost: Infinity };
  for (let start = 0; start < STARTS; start++) {
    let set = cheapest(low + ((high - low) * start) / (STARTS - 1));
    for (let round = 0; round < MOST_ROUNDS; round++) {
      const next = cheapest(meanOf(set.map(mass)));
      if (next.every((i) => set.includes(i))) break;
      set = next;
    }
    const cost = costOf(set);
    if (cost < best.cost) best = { set, cost };
  }
  return best.set.toSorted((p, q) => p - q);
}

function setOf(arrows: readonly MeasuredArrow[], set: readonly number[], b: number): ArrowSet {
  const masses = set.map((i) => at(arrows, i).mass);
  const squares = set.reduce((sum, i) => sum + at(arrows, i).own ** 2, 0);
  return {
    arrows: set,
    massMean: si(meanOf(masses)),
    massSd: si(sampleSd(masses)),
    massRange: si(Math.max(...masses) - Math.min(...masses)),
    heightSd: si(Math.abs(b) * sampleSd(masses)),
    ownRms: si(Math.sqrt(squares / set.length)),
  };
}
