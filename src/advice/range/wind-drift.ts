import { calm, type Wind, windFrom } from '../../atmosphere/wind.ts';
import { flyer } from '../../flight/trajectory.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../../quantities/quantity.ts';
import { pinPaths } from '../../sight/pin-paths.ts';
import type { Rig } from '../../sight/rig.ts';
import { sightIn } from '../../sight/sighted.ts';
import { impact } from '../../sight/zero.ts';
import type { Miss } from '../lean/cant.ts';
import { rangeOfPin } from './level-range.ts';

/** What a wind does at one range to a bow sighted in for still air. */
export interface WindMiss extends Miss {
  /** Level range whose mark hits in this wind, less the range: positive when the arrow falls low; null where no mark does. */
  readonly markChange: Metres | null;
}

export interface WindEffect {
  readonly speed: MetresPerSecond;
  /** Bearing it comes from: 0 ahead, a quarter turn from the right. */
  readonly from: Radians;
  readonly rows: readonly WindMiss[];
}

/** Twelve directions as on a clock: 12 o'clock from ahead, 3 o'clock from the right. */
export const CLOCK: readonly Radians[] = Array.from({ length: 12 }, (_, hour) => si((hour * Math.PI) / 6));

/**
 * What a wind of one speed does from each of `directions` (rad) at each of `ranges` (m): the wind's own effect alone, the bow
 * sighted in for still air. Its profile with height is that of the rig's wind.
 *
 * A wind W across drifts an arrow W (t − x/v₀), t the time of flight and v₀ the forward launch speed, once it lies along its
 * airspeed; that it leaves the bow across the wind, and turns into it, comes on top where the parts of the arrow tell how
 * (flight/entry.ts).
 *
 * @source the lag rule: Didion; McCoy, Modern Exterior Ballistics, ch. 7
 * @checked reference/crosswind-lag
 */
export function windEffects(
  rig: Rig,
  speed: MetresPerSecond,
  directions: readonly Radians[],
  ranges: readonly number[],
): readonly WindEffect[] {
  const still = inWind(rig, calm);
  const { pins, flight, zero } = sightIn(still, ranges);
  const { shear, referenceHeight } = rig.conditions.wind;
  return directions.map((from) => {
    const blown = inWind(rig, windFrom(speed, from, shear, referenceHeight));
    const blownFlight = flyer(blown.conditions);
    const { pins: pinsThere } = pinPaths(blown, zero, ranges, blownFlight);
    return {
      speed,
      from,
      rows: ranges.map((range, i): WindMiss => {
        const pin = pins[i];
        if (pin === undefined) throw new RangeError(`no pin for range ${i}`);
        const [straight, hit] = [impact(flight, still, pin, range), impact(blownFlight, blown, pin, range)];
        const pinThere = { ...pin, down: pinsThere[i] ?? Number.NaN };
        const mark = rangeOfPin(still, flight, pinThere, range);
        return {
          range: si(range),
          lateral: si(hit.lateral - straight.lateral),
          vertical: si(hit.height - straight.height),
          markChange: mark === null ? null : si(mark - range),
        };
      }),
    };
  });
}

const inWind = (rig: Rig, wind: Wind): Rig => ({ ...rig, conditions: { ...rig.conditions, wind } });
