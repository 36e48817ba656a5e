import {
  type LateralMark,
  type LateralPriors,
  TOLD_CROSSWIND_SD,
  USUAL_PRIORS,
} from '../../calibration/sideways/lateral-mark.ts';
import { DEGREE } from '../../quantities/exact.ts';
import { si } from '../../quantities/quantity.ts';
import type { MarkEntry, SetupFile, WindSection } from '../schema/schema.ts';
import { archerSpread } from './archer-spread.ts';
import type { DaySettings } from './assemble-days.ts';
import { centreSdOf } from './assemble-marks.ts';
import { defaultOf } from './defaults.ts';
import { type HasShots, shotsIn } from './shots.ts';
import { statedSd } from './stated-sd.ts';

/** A cant held on purpose by eye or by a pocket inclinometer is that sure, rad. @source common practice, no source */
const HELD_CANT_SD = 0.25 * DEGREE;
/** Upright and end for end are held by the level itself. */
const BY_LEVEL = [0, Math.PI, -Math.PI];

/** Whatever holds a setup file. */
interface HasMarks {
  readonly setup: HasShots;
  /** What was different on the days that the file describes. */
  readonly days?: DaySettings;
}

/** Of the vanes that shot a group, right positive; null when they were the arrow's own. */
function turnOf({ turn }: MarkEntry): 1 | -1 | null {
  if (turn === undefined) return null;
  return turn === 'right' ? 1 : -1;
}

/** The groups of a setup file whose left and right was written down; none when the marks are left aside. */
export function lateralMarks(
  { setup, days = new Map() }: HasMarks,
  leftAside: boolean,
): readonly LateralMark[] {
  if (leftAside) return [];
  const spread = archerSpread({ setup });
  return shotsIn(setup).marks.flatMap((entry): readonly LateralMark[] => {
    if (entry.lateral === undefined) return [];
    const cant = entry.cant ?? si<'rad'>(0);
    const setting = entry.date === undefined ? undefined : days.get(entry.date);
    const byLevel = BY_LEVEL.some((angle) => Math.abs(angle - cant) < 1e-9);
    return [
      {
        range: entry.range,
        lateral: entry.lateral,
        sd: statedSd.markLateral(entry) ?? centreSdOf(entry, spread),
        turn: turnOf(entry),
        cant,
        day: entry.date ?? null,
        ...(setting === undefined ? {} : { setting }),
        cantSd: statedSd.markCant(entry) ?? si(byLevel ? 0 : HELD_CANT_SD),
      },
    ];
  });
}

/**
 * What is known of the causes of a sideways miss before the groups: what is usual, a plumb that was measured (the sight's travel
 * against a plumb line, by `sight.lean_sd`), and the wind that the file tells of.
 */
export function lateralPriors({
  setup,
}: {
  readonly setup: Pick<SetupFile, 'sight' | 'wind'>;
}): LateralPriors {
  const { sight, wind } = setup;
  const lean = statedSd.lean(sight);
  const plumbed = lean === undefined ? {} : { plumb: { value: 0, sd: lean } };
  return {
    ...USUAL_PRIORS,
    ...plumbed,
    ...(wind === undefined ? {} : { crosswindSd: toldCrosswindSd(wind) }),
  };
}

/** Of a wind's part across the line of sight; what the file does not say of its speed is a light air's. */
function toldCrosswindSd(wind: WindSection): number {
  const bearing = wind.from ?? defaultOf('wind.from');
  const bearingSd = statedSd.windFrom(wind);
  const ofBearing = bearingSd === undefined ? 0 : wind.speed * Math.cos(bearing) * bearingSd;
  return Math.hypot(statedSd.windSpeed(wind) ?? TOLD_CROSSWIND_SD, ofBearing);
}
