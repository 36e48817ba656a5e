import { carry } from '../../flight/carry.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import type { Launch } from '../../flight/launch.ts';
import { at } from '../../numerics/at.ts';
import { unlessNumericalError } from '../../numerics/numerical-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { farthestOf } from '../../sight/reach.ts';
import type { Rig } from '../../sight/rig.ts';
import { type ShotRow, shotRows } from '../../sight/shot.ts';
import { QuestionError } from '../asked/question-error.ts';

export interface FlyAsked {
  /** The range that the sight is set for. */
  readonly aim: Metres;
  readonly launch: Launch;
  /** Rising; at least one. */
  readonly ranges: readonly Metres[];
  /** Those of the ranges that the arrow reaches off the string; at least one. */
  readonly free: readonly Metres[];
}

/** One shot, by range. */
export interface FlyFindings {
  readonly aim: Metres;
  /** Of the launch above the line of sight, seen from the side. */
  readonly launchAngle: Radians;
  readonly rows: readonly ShotRow[];
  /** The first row, where nearer ones were asked for that lie on the string; else null. */
  readonly beginsAt: Metres | null;
  /** The last row, where farther ones were asked for; else null. */
  readonly endsAt: Metres | null;
  /** Whether no shot of the arrow carries farther than that; else it is this one that falls upright. */
  readonly endsForAll: boolean;
  /** The file names no parts, so the arrow flies as a point. */
  readonly isPoint: boolean;
}

/** @throws QuestionError when no shot of the arrow carries to the first range */
export function flyFindings(
  { assembly, calibration: { rig } }: OpenSetup,
  { aim, launch, ranges, free }: FlyAsked,
): FlyFindings {
  const within = reached(rig, free);
  const rows = flownRows(rig.conditions, launch, within);
  return {
    aim,
    launchAngle: si(Math.atan2(launch.velocity[1], launch.velocity[0])),
    rows,
    beginsAt: free.length < ranges.length ? at(free, 0) : null,
    endsAt: rows.length < free.length ? at(rows, rows.length - 1).range : null,
    endsForAll: rows.length === within.length,
    isPoint: assembly.arrow.staticMargin === null,
  };
}

/** The shot at as many of the ranges as it gets to: uphill, or with much drag, it may fall upright before the last. */
function flownRows(
  conditions: FlightConditions,
  launch: Launch,
  ranges: readonly Metres[],
): readonly ShotRow[] {
  const to = (count: number): readonly ShotRow[] | null =>
    unlessNumericalError(() => shotRows(conditions, launch, ranges.slice(0, count)));
  const all = to(ranges.length);
  if (all !== null) return all;
  const count = farthestOf(ranges.length - 1, (most) => to(most) !== null);
  // Where none can be flown, the failure says why.
  return shotRows(conditions, launch, count === 0 ? ranges : ranges.slice(0, count));
}

/** Nearer than this every bow reaches; the search for the farthest is spared, m. */
const SURELY_REACHED = 100;

/** Of the ranges, those that some shot of this arrow over level ground could reach; downhill there is no such end. */
function reached({ conditions, launchSpeed }: Rig, ranges: readonly Metres[]): readonly Metres[] {
  if (conditions.slope < 0 || at(ranges, ranges.length - 1) < SURELY_REACHED) return ranges;
  const { distance } = carry(conditions, launchSpeed);
  const within = ranges.filter((range) => range <= distance);
  if (within.length > 0) return within;
  throw new QuestionError(
    `{to}: this arrow cannot carry farther than ${distance.toFixed(0)} m`,
    'Write a shorter {to} and a shorter {every}.',
  );
}
