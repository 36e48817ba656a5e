import { at } from '../numerics/at.ts';
import type { Metres } from '../quantities/quantity.ts';
import { PRIOR_FREEDOM } from './group.ts';

/** Where one arrow hit, from the aim, m. */
export interface Hit {
  readonly right: number;
  readonly high: number;
}

/** A group of which every arrow was measured. */
export interface HitGroup {
  readonly range: Metres;
  readonly hits: readonly Hit[];
}

/** An arrow that does not belong with the others. */
export interface WildArrow {
  /** Places in the lists of groups and of hits. */
  readonly group: number;
  readonly arrow: number;
  /** Chance that any arrow of all groups lies so far off if all are of one archer. */
  readonly chance: number;
}

/** What is known of an archer's arrows beside the groups in question: squares of single arrows per metre of range. */
interface KnownSpread {
  readonly freedom: number;
  /** Sum over the degrees of freedom, m² per m². */
  readonly squares: number;
}

/** Below this chance an arrow is taken for a wild one: in a hundred evenings of good arrows one is named so. */
const WILD_CHANCE = 0.01;
/** More than this are no exceptions: the archer's spread is theirs too, and each takes a look at all others. */
const MOST_WILD = 20;
/** Of two arrows nothing tells which is the wild one. */
const FEWEST = 3;

/**
 * The arrows that lie farther from the middle of the others of their group than chance allows, the wildest first. Each is left
 * out before the next is looked for, so that one wild arrow hides no other and does not widen the spread that it is judged by.
 *
 *   F = d²/(2 s² (1 + 1/m)),   P(F) = (1 + 2F/ν)^(-ν/2)
 *
 * d from the middle of the m others; s the spread of one arrow in one direction at that range, from all groups without this
 * arrow, with ν degrees of freedom. P is exact for F with 2 and ν; times the number of arrows, as any of them might have been it.
 *
 * @param known of the archer from elsewhere; the usual spread of an archer is among it
 * @source F distribution with 2 degrees of freedom of the numerator: Abramowitz, Stegun, Handbook of Mathematical Functions,
 *   1964, 26.6.4
 */
export function wildArrows(groups: readonly HitGroup[], known: KnownSpread): readonly WildArrow[] {
  const wild: WildArrow[] = [];
  const isLeft = (group: number, arrow: number): boolean =>
    !wild.some((each) => each.group === group && each.arrow === arrow);
  for (;;) {
    const left = groups.map(({ range, hits }, g) => ({
      range,
      hits: hits.flatMap((hit, arrow) => (isLeft(g, arrow) ? [{ ...hit, arrow }] : [])),
    }));
    const count = left.reduce((sum, { hits }) => sum + hits.length, 0);
    // Of all other groups once, and not for every arrow: those of a season are thousands.
    const elsewhere = left.map((_, group) => pooled(left.toSpliced(group, 1), known));
    const judged = left.flatMap(({ range, hits }, group) =>
      hits.length < FEWEST
        ? []
        : hits.map((hit, place): WildArrow => {
            const others = hits.toSpliced(place, 1);
            const spread = pooled([{ range, hits: others }], at(elsewhere, group));
            const middle = middleOf(others);
            const square = (hit.right - middle.right) ** 2 + (hit.high - middle.high) ** 2;
            const F = (square * spread.freedom) / (2 * spread.squares * range ** 2 * (1 + 1 / others.length));
            const chance = (1 + (2 * F) / spread.freedom) ** (-spread.freedom / 2);
            return { group, arrow: hit.arrow, chance: Math.min(1, count * chance) };
          }),
    );
    const wildest = judged.toSorted((a, b) => a.chance - b.chance)[0];
    if (wildest === undefined || wildest.chance >= WILD_CHANCE) return wild;
    wild.push(wildest);
    if (wild.length >= MOST_WILD) return wild;
  }
}

/** Squares of single arrows about the middle of their group, per metre of range, of all groups and what is known besides. */
function pooled(groups: readonly HitGroup[], known: KnownSpread): KnownSpread {
  return groups.reduce(
    ({ freedom, squares }, { range, hits }) => ({
      freedom: freedom + Math.max(0, 2 * (hits.length - 1)),
      squares: squares + squaresOf(hits) / range ** 2,
    }),
    known,
  );
}

/** What is known of an archer of whom nothing was measured: as much as a group of three says, at the usual spread. */
export const usualSpread = (perRange: number): KnownSpread => ({
  freedom: PRIOR_FREEDOM,
  squares: PRIOR_FREEDOM * perRange ** 2,
});

/** The middle of at least one hit. */
export function middleOf(hits: readonly Hit[]): Hit {
  const mean = (of: (hit: Hit) => number): number =>
    hits.reduce((sum, hit) => sum + of(hit), 0) / hits.length;
  return { right: mean(({ right }) => right), high: mean(({ high }) => high) };
}

/** Sum of the squares of the distances from the middle, m²; none of no hits. */
function squaresOf(hits: readonly Hit[]): number {
  if (hits.length === 0) return 0;
  const middle = middleOf(hits);
  return hits.reduce(
    (sum, { right, high }) => sum + (right - middle.right) ** 2 + (high - middle.high) ** 2,
    0,
  );
}

/**
 * Standard deviation of one arrow in one direction, m, from at least two hits: √(Σ d²/(2(n − 1))).
 *
 * @throws RangeError for fewer
 */
export function spreadOf(hits: readonly Hit[]): number {
  at(hits, 1);
  return Math.sqrt(squaresOf(hits) / (2 * (hits.length - 1)));
}
