import { calm } from '../../atmosphere/wind.ts';
import { flyer } from '../../flight/trajectory.ts';
import { barycentricWeights, chebyshevNodes, interpolateAt } from '../../numerics/chebyshev.ts';
import { gaussLegendre } from '../../numerics/quadrature.ts';
import { bracketedRoot } from '../../numerics/root.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { type Sighted, sightIn } from '../../sight/sighted.ts';
import { impact } from '../../sight/zero.ts';
import { levelErrors } from '../lean/cant.ts';
import { insideRing } from './inside-ring.ts';

/** Standard deviations of what goes wrong from shot to shot: unknown to the archer, independent, normal. */
export interface Spread {
  /** Of the guessed range, as a share of it; 0 for a rangefinder. */
  readonly guess: number;
  readonly cant: Radians;
  readonly windAcross: MetresPerSecond;
  readonly windAlong: MetresPerSecond;
  /** Of one arrow in one direction, per metre of range; above 0. */
  readonly arrow: number;
}

/** Chances of a hit at one range. */
export interface HitChance {
  readonly range: Metres;
  readonly chance: number;
  /** The same with one of the causes gone: what mending it would bring. */
  readonly without: { readonly guess: number; readonly cant: number; readonly wind: number };
}

/** Guesses this many standard deviations off are counted; beyond lies 6e-5 of them. */
const GUESSES_COUNTED = 4;
/** No guess is nearer than this share of the range: marks turn back close by. */
const NEAREST_GUESS = 0.3;
/** Guesses whose hits are found; the height between them is read from a polynomial, to 1e-6 m. */
const GUESS_NODES = 16;
/** Nodes over the guesses that can hit. */
const CHANCE_NODES = 48;
/** Standard deviations of a hit's height beyond the ring that are counted. */
const REACH = 6;

/**
 * Chance of a hit inside a ring (m across, by the arrow's centre), aimed at its centre with the mark of the guessed range.
 *
 * The guess is carried through the marks exactly, by quadrature over its normal distribution; cant, wind and the archer's own
 * scatter are normal and to first order: sideways sd² = (s x)² + (dz/dcant)² + (dz/dwind)², upward sd² = (s x)² + (dy/dwind)².
 * What a cant takes off the height, h (1 − cos c), is left out: 4 mm at 90 m for 2 deg.
 *
 * @checked unit: against shots drawn one by one through the full model
 */
export function hitChances(
  rig: Rig,
  ring: number,
  ranges: readonly number[],
  spread: Spread,
): readonly HitChance[] {
  const still = { ...rig, conditions: { ...rig.conditions, wind: calm } };
  const lowest = Math.max(-GUESSES_COUNTED * spread.guess, NEAREST_GUESS - 1);
  const highest = Math.max(GUESSES_COUNTED * spread.guess, SMALLEST_GUESS);
  const errors = chebyshevNodes(GUESS_NODES, Math.min(lowest, -SMALLEST_GUESS), highest);
  const sighted = sightIn(still, [
    ...ranges,
    ...ranges.flatMap((range) => errors.map((error) => range * (1 + error))),
  ]);
  const perCant = levelErrors(still, ranges);
  const weights = barycentricWeights(GUESS_NODES);
  return ranges.map((range, i) => {
    const down = (k: number): number => sighted.pins[k]?.down ?? Number.NaN;
    const heights = errors.map((_, k) =>
      sighted.paths.height(down(ranges.length + i * GUESS_NODES + k), range),
    );
    const wind = windSlopes(sighted, i, range, spread);
    const own = spread.arrow * range;
    const lateral = sighted.paths.lateral(down(i), range);
    const chance = ({ guess = 1, cant = 1, air = 1 }): number => {
      const upward = Math.hypot(own, air * wind.along * spread.windAlong);
      const sideways = Math.hypot(
        own,
        cant * (perCant[i]?.lateralPerRadian ?? Number.NaN) * spread.cant,
        air * wind.across * spread.windAcross,
      );
      const inside = (height: number): number => insideRing(ring / 2, { height, lateral, upward, sideways });
      return guess === 0 || spread.guess === 0
        ? inside(0)
        : overGuesses(
            (error) => interpolateAt(errors, weights, heights, error),
            inside,
            [lowest, highest],
            spread.guess,
            ring / 2 + REACH * upward,
          );
    };
    return {
      range: si(range),
      chance: chance({}),
      without: { guess: chance({ guess: 0 }), cant: chance({ cant: 0 }), wind: chance({ air: 0 }) },
    };
  });
}

/** Keeps the nodes apart when the range is known. */
const SMALLEST_GUESS = 1e-3;

/** ∫ inside(height(e)) N(e; 0, sd) de over the guesses whose hits come within `reach` of the centre. */
function overGuesses(
  height: (error: number) => number,
  inside: (height: number) => number,
  [lowest, highest]: readonly [number, number],
  sd: number,
  reach: number,
): number {
  const edge = (at: number, side: 1 | -1): number =>
    side * height(at) <= reach
      ? at
      : bracketedRoot((error) => side * height(error) - reach, 0, at, { tolerance: 1e-9 });
  const [low, high] = [edge(lowest, -1), edge(highest, 1)];
  const { nodes, weights } = gaussLegendre(CHANCE_NODES);
  const sum = nodes.reduce((total, node, k) => {
    const error = (low + high + (high - low) * node) / 2;
    const density = Math.exp(-((error / sd) ** 2) / 2) / (sd * Math.sqrt(2 * Math.PI));
    return total + (weights[k] ?? 0) * density * inside(height(error));
  }, 0);
  return (sum * (high - low)) / 2;
}

/** Half the difference of winds that the slopes are taken over where there is none to take it over, m/s. */
const GUST = 1;

/**
 * What a m/s of wind does at a range: to the side for one from the side, to the height for one from behind. Taken over the
 * winds asked about, because an arrow enters a strong wind a little less far for every m/s of it than a weak one.
 */
function windSlopes(
  { rig, pins }: Sighted,
  i: number,
  range: number,
  spread: Spread,
): { across: number; along: number } {
  const [side, back] = [spread.windAcross || GUST, spread.windAlong || GUST];
  const pin = pins[i];
  if (pin === undefined) throw new RangeError(`no pin for range ${i}`);
  const blown = (tail: number, across: number): { height: number; lateral: number } => {
    const wind = { ...calm, tail: si<'m/s'>(tail), across: si<'m/s'>(across) };
    const blowing = { ...rig, conditions: { ...rig.conditions, wind } };
    return impact(flyer(blowing.conditions), blowing, pin, range);
  };
  return {
    across: (blown(0, side).lateral - blown(0, -side).lateral) / (2 * side),
    along: (blown(back, 0).height - blown(-back, 0).height) / (2 * back),
  };
}
