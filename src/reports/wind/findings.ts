import { type AirChange, airChanges, type Elsewhere, otherAirs } from '../../advice/range/air-change.ts';
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
  { speed, ranges, elsewhere }: Pick<WindFindings, 'speed' | 'ranges'> & { readonly elsewhere: Elsewhere },
): WindFindings {
  const { rig } = opened.calibration;
  return {
    speed,
    ranges,
    effects: windEffects(rig, speed, CLOCK, ranges),
    entryCounted: entersWind(rig.conditions.arrow),
    airs: airChanges(rig, otherAirs(rig.conditions.air, elsewhere), ranges, archerSpread(opened)),
  };
}
