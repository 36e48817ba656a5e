import { flyer } from '../../flight/trajectory.ts';
import { at } from '../../numerics/at.ts';
import { once } from '../../numerics/once.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import { pinPaths } from '../../sight/pin-paths.ts';
import type { Rig } from '../../sight/rig.ts';
import { sightIn } from '../../sight/sighted.ts';
import { AT_ITS_END, ENDLESS_SLIDER, type Slider } from '../../sight/tape.ts';
import { impact, pinForHit } from '../../sight/zero.ts';
import { highestPin, rangeOfPin } from './level-range.ts';

/** What to set for one shot up or down a slope. */
export interface SlopeMark {
  /** Along the line of sight, as a rangefinder reads it. */
  readonly range: Metres;
  /** Uphill positive. */
  readonly slope: Radians;
  /** The level range whose mark hits; null where the highest mark of level ground, or the end of the slider, is too low a pin. */
  readonly markRange: Metres | null;
  /** Of the pin, from its place at the zero range on the level; positive down. */
  readonly travel: Metres;
  /** range × cos(slope), as a rule of thumb has it. */
  readonly cosineRange: Metres;
  /** Height of the hit with the mark of `cosineRange` set: high positive. */
  readonly missByCosine: Metres;
  /** Height of the hit with the level mark of the range itself set. */
  readonly missByRange: Metres;
  /** How far below the spot to hold: the height of the hit with the highest mark that can be set where none hits, else 0. */
  readonly hold: Metres;
}

/**
 * Marks for every one of `slopes` (rad) at every one of `ranges` (m along the line of sight, beyond the bow), by slope,
 * then range.
 *
 * The sight stays as it was set on level ground. Without drag the level range to set is R cos θ/(1 − tan α tan θ), α the
 * launch angle above the line of sight: further than R cos θ uphill, nearer downhill.
 *
 * @param slider how far up the pin goes from its place at the zero range; where nobody has measured it, to every mark
 * @throws NumericalError when the arrow falls short
 * @checked the closed form above
 */
export function slopeMarks(
  rig: Rig,
  ranges: readonly number[],
  slopes: readonly number[],
  { aboveZero }: Pick<Slider, 'aboveZero'> = ENDLESS_SLIDER,
): readonly SlopeMark[] {
  const level = onSlope(rig, 0);
  const { flight, zero, pins: levelPins } = sightIn(level, ranges);
  const top = aboveZero === null ? Number.NEGATIVE_INFINITY : zero.down - aboveZero;
  const highest = once(() => Math.max(top, highestPin(level, zero.windage, flight)));
  return slopes.flatMap((slope) => {
    const tilted = onSlope(rig, slope);
    const tiltedFlight = flyer(tilted.conditions);
    const { pins } = pinPaths(tilted, zero, ranges, tiltedFlight);
    const heightWith = (down: number, range: number): Metres =>
      si(impact(tiltedFlight, tilted, { down, windage: zero.windage }, range).height);
    return ranges.map((range, i): SlopeMark => {
      const down = at(pins, i);
      const cosineRange = range * Math.cos(slope);
      const cosinePin = pinForHit(level, cosineRange, zero.windage, flight);
      const markRange =
        down < top - AT_ITS_END ? null : rangeOfPin(level, flight, { down, windage: zero.windage }, range);
      return {
        range: si(range),
        slope: si(slope),
        markRange: markRange === null ? null : si(markRange),
        travel: si(down - zero.down),
        cosineRange: si(cosineRange),
        missByCosine: heightWith(cosinePin.down, range),
        missByRange: heightWith(at(levelPins, i).down, range),
        hold: markRange === null ? heightWith(highest(), range) : si(0),
      };
    });
  });
}

/** The same rig with its line of sight at another slope. */
export const onSlope = (rig: Rig, slope: number): Rig => ({
  ...rig,
  conditions: { ...rig.conditions, slope: si(slope) },
});
