import { type AirChange, airChanges, usualAirs } from '../../advice/range/air-change.ts';
import { CLOCK, type WindEffect, windEffects } from '../../advice/range/wind-drift.ts';
import type { Metres, MetresPerSecond } from '../../quantities/quantity.ts';
import { archerSpread } from '../../setup/assemble/archer-spread.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { entersWind } from '../not-measured.ts';

/** What a wind of one speed does from every hour of the clock, and what other air does to the marks. */
export interface WindFindings {
  readonly speed: MetresPerSecond;
  readonly ranges: readonly Metres[];
  /** From twelve o'clock on, clockwise. */
  readonly effects: readonly WindEffect[];
  readonly airs: readonly AirChange[];
  /** Whether the drift counts that the arrow turns into the wind it leaves the bow across. */
  readonly entryCounted: boolean;
}

export function windFindings(
  opened: OpenSetup,
  { speed, ranges }: Pick<WindFindings, 'speed' | 'ranges'>,
): WindFindings {
  const { rig } = opened.calibration;
  return {
    speed,
    ranges,
    effects: windEffects(rig, speed, CLOCK, ranges),
    entryCounted: entersWind(rig.conditions.arrow),
    airs: airChanges(rig, usualAirs(rig.conditions.air), ranges, archerSpread(opened)),
  };
}
