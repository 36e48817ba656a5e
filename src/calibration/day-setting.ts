import type { FlyingArrow } from '../arrow/flying-arrow.ts';
import type { Air } from '../atmosphere/air.ts';
import type { Wind } from '../atmosphere/wind.ts';
import { speedAtTemperature } from '../bow/temperature.ts';
import { type Metres, type Radians, si } from '../quantities/quantity.ts';
import type { Rig } from '../sight/rig.ts';

/** Another arrow from the same bow, beside the one that a calibration is about. */
export interface DayArrow {
  readonly flying: FlyingArrow;
  /** Its own free flight, as its balance point lies elsewhere. */
  readonly freeFlight: Metres;
  /** Its launch speed over that of the calibration's arrow, and what that may be wrong by, relative. */
  readonly speedRatio: number;
  readonly speedRatioSd: number;
  /** What its drag may be wrong by beside the error that it shares with the calibration's arrow, relative. */
  readonly dragSd: number;
}

/** What was different on a day of shooting. The sight stands as it was zeroed: a day changes the flight only. */
export interface DaySetting {
  readonly air: Air;
  readonly wind: Wind;
  /** Acceleration of free fall, m/s². */
  readonly freeFall: number;
  /** How the bow leaned, clockwise positive. */
  readonly cant: Radians;
  /** How much warmer it was than when the launch speed was measured, K. */
  readonly warmer: number;
  /** Null for the calibration's own. */
  readonly arrow: DayArrow | null;
}

/**
 * The rig on a day: its parameters as they are, in that day's air and wind and with that day's arrow.
 *
 * @param perDegree how much faster the bow shoots for each kelvin, m/s per K
 */
export function onDay(
  rig: Rig,
  { air, wind, freeFall, cant, warmer, arrow }: DaySetting,
  perDegree: number,
): Rig {
  const launchSpeed = speedAtTemperature(rig.launchSpeed, perDegree, warmer);
  const conditions = { ...rig.conditions, air, wind, freeFall };
  if (arrow === null) return { ...rig, conditions, launchSpeed, cant };
  const { flying, freeFlight, speedRatio } = arrow;
  return {
    ...rig,
    conditions: {
      ...conditions,
      // A factor that the marks gave the drag of one arrow holds for the other.
      arrow: { ...flying, dragScale: flying.dragScale * rig.conditions.arrow.dragScale },
    },
    launchSpeed: si(launchSpeed * speedRatio),
    geometry: { ...rig.geometry, freeFlight },
    cant,
  };
}
