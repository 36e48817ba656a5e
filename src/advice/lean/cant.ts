import { DEGREE } from '../../quantities/exact.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { PinPosition } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';
import { type Sighted, sightIn } from '../../sight/sighted.ts';
import { impact, pinAtZero } from '../../sight/zero.ts';

/** How far an arrow is off at one range: right and high positive. */
export interface Miss {
  readonly range: Metres;
  readonly lateral: Metres;
  readonly vertical: Metres;
}

/** What one cant costs. */
export interface CantEffect {
  /** Beyond how the bow was held when it was sighted in; clockwise, top limb to the right, positive. */
  readonly cant: Radians;
  /** Sighted in as held, then turned by the cant without noticing. */
  readonly rows: readonly Miss[];
  /** The same cant held always: windage and height set again at the zero range, every mark kept. */
  readonly rezeroed: readonly Miss[];
}

/** What a level that is off costs at one range, per radian of its error. */
export interface LevelError {
  readonly range: Metres;
  /** d(lateral)/d(cant), m/rad. */
  readonly lateralPerRadian: number;
  /** The same after setting windage and height again at the zero range. */
  readonly rezeroedPerRadian: number;
}

/** The derivative is taken over this much either way, rad: the sideways miss is straight in the cant to 1e-5 of itself there. */
const HALF_STEP = 0.5 * DEGREE;

/**
 * What each of `cants` (rad) costs at each of `ranges` (m): the bow sighted in as it is held, then turned about the line of
 * sight.
 *
 * Only the change is told: what moves an upright arrow sideways (wind, spin) is taken off. To first order the sideways miss
 * is the drop below the launch line times sin(cant), and the arrow is low by the drop times (1 − cos(cant)).
 *
 * @throws NumericalError when the arrow falls short
 * @checked reference/bow-cant
 */
export function cantEffects(
  rig: Rig,
  cants: readonly number[],
  ranges: readonly number[],
): readonly CantEffect[] {
  const sighted = sightIn(rig, ranges);
  const straight = ranges.map((range, i) => impact(sighted.flight, rig, pinOf(sighted, i), range));
  return cants.map((cant) => {
    const canted = turned(rig, cant);
    const zero = pinAtZero(canted, null, sighted.flight);
    const missWith = (pin: (i: number) => PinPosition): readonly Miss[] =>
      ranges.map((range, i) => {
        const hit = impact(sighted.flight, canted, pin(i), range);
        return {
          range: si(range),
          lateral: si(hit.lateral - (straight[i]?.lateral ?? Number.NaN)),
          vertical: si(hit.height - (straight[i]?.height ?? Number.NaN)),
        };
      });
    return {
      cant: si(cant),
      rows: missWith((i) => pinOf(sighted, i)),
      rezeroed: missWith((i) => ({
        down: zero.down + pinOf(sighted, i).down - sighted.zero.down,
        windage: zero.windage,
      })),
    };
  });
}

/** What each radian of an error of the level costs by range; a degree is 0.01745 of it. */
export function levelErrors(rig: Rig, ranges: readonly number[]): readonly LevelError[] {
  const [left, right] = cantEffects(rig, [-HALF_STEP, HALF_STEP], ranges);
  const slope = (of: 'rows' | 'rezeroed', i: number): number =>
    ((right?.[of][i]?.lateral ?? Number.NaN) - (left?.[of][i]?.lateral ?? Number.NaN)) / (2 * HALF_STEP);
  return ranges.map((range, i) => ({
    range: si(range),
    lateralPerRadian: slope('rows', i),
    rezeroedPerRadian: slope('rezeroed', i),
  }));
}

const turned = (rig: Rig, cant: number): Rig => ({ ...rig, cant: si(rig.cant + cant) });

const pinOf = ({ pins, zero }: Sighted, i: number): PinPosition => pins[i] ?? zero;
