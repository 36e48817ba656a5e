import { flyer } from '../../flight/trajectory.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import { pinPaths } from '../../sight/pin-paths.ts';
import type { Rig } from '../../sight/rig.ts';
import { impact, pinAtZero } from '../../sight/zero.ts';
import { onSlope } from '../range/slope.ts';

/** What a level that points a little ahead costs on a slope. */
export interface ThirdAxisMiss {
  readonly range: Metres;
  readonly slope: Radians;
  /** How far the bow is turned about the line of sight with the bubble centred; clockwise positive. */
  readonly cant: Radians;
  /** Right and high positive. */
  readonly lateral: Metres;
  readonly vertical: Metres;
}

/**
 * How far the bow is canted on a slope with its bubble centred, when the level is not square to the line of sight seen from
 * above.
 *
 *   sin(cant) = tan(error) tan(slope)
 *
 * The level's direction r cos e + x sin e (r to the right of the bow, x along the line of sight) must be horizontal. The bow's
 * sideways axis then dips by asin(sin e sin(slope)) or so: that smaller angle is what a plumb line shows.
 *
 * @param error of the third axis: the level's right end ahead of its left, positive
 * @throws DomainError where no cant centres the bubble
 */
export function thirdAxisCant(error: number, slope: number): Radians {
  const sine = Math.tan(error) * Math.tan(slope);
  if (!(Math.abs(sine) <= 1))
    throw new DomainError(
      'tan(third-axis error) tan(slope)',
      sine,
      '-1 to 1: else no cant centres the bubble',
    );
  return si(Math.asin(sine));
}

/**
 * What an error of the third axis costs at each slope (rad) and range (m): the shot with the right mark for the slope and the
 * bubble centred, less the same with a true level.
 */
export function thirdAxisMisses(
  rig: Rig,
  error: number,
  ranges: readonly number[],
  slopes: readonly number[],
): readonly ThirdAxisMiss[] {
  const level = onSlope(rig, 0);
  const zero = pinAtZero(level, null);
  return slopes.flatMap((slope) => {
    const tilted = onSlope(rig, slope);
    const flight = flyer(tilted.conditions);
    const cant = thirdAxisCant(error, slope);
    const canted = { ...tilted, cant: si<'rad'>(tilted.cant + cant) };
    const { pins } = pinPaths(tilted, zero, ranges, flight);
    return ranges.map((range, i) => {
      const pin = { down: pins[i] ?? Number.NaN, windage: zero.windage };
      const [upright, turned] = [impact(flight, tilted, pin, range), impact(flight, canted, pin, range)];
      return {
        range: si(range),
        slope: si(slope),
        cant,
        lateral: si(turned.lateral - upright.lateral),
        vertical: si(turned.height - upright.height),
      };
    });
  });
}
