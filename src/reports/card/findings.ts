import { levelErrors } from '../../advice/lean/cant.ts';
import { type SlopeMark, slopeMarks } from '../../advice/range/slope.ts';
import { CLOCK, windEffects } from '../../advice/range/wind-drift.ts';
import { at } from '../../numerics/at.ts';
import { toSi } from '../../quantities/format.ts';
import { type Metres, type MetresPerSecond, si } from '../../quantities/quantity.ts';
import { launchThrough } from '../../sight/geometry.ts';
import { marksFor } from '../../sight/marks.ts';
import type { Rig } from '../../sight/rig.ts';
import { shotRows } from '../../sight/shot.ts';
import { sightIn } from '../../sight/sighted.ts';
import { type SureMark, sureMarks, touchingFrom } from '../marks/findings.ts';
import { roundRanges } from '../round-ranges.ts';
import type { Session } from '../session.ts';

/** What a card tells of one range, SI. */
interface CardRow extends SureMark {
  /** Of the arrow that arrives there with that mark set. */
  readonly time: number;
  readonly speed: number;
  readonly energy: number;
  readonly momentum: number;
  /** With the wind square from the left; right positive. */
  readonly windDrift: number;
  /** Sideways miss for each radian that the bow leans. */
  readonly lateralPerRadian: number;
}

/** Everything a card tells. */
export interface CardFindings {
  readonly session: Session;
  readonly crosswind: MetresPerSecond;
  readonly rows: readonly CardRow[];
  /** Of round ranges beyond the highest mark; by slope, then range. */
  readonly slopes: readonly SlopeMark[];
  /** The first whole range at which the arrow would touch the sight; null when it never does. */
  readonly touching: Metres | null;
}

export interface CardQuestions {
  readonly ranges: readonly Metres[];
  readonly slopes: readonly number[];
  readonly crosswind: MetresPerSecond;
}

/** Slopes are told for this many round ranges at most: between them a cut changes by less than a pin can be set to. */
const SLOPE_RANGES = 9;

/** Straight from the left: the drift is to the right. */
const FROM_THE_LEFT = CLOCK.slice(9, 10);

export function cardFindings(session: Session, { ranges, slopes, crosswind }: CardQuestions): CardFindings {
  const { rig } = session.calibration;
  const sighted = sightIn(rig, ranges);
  const wind = at(windEffects(rig, crosswind, FROM_THE_LEFT, ranges), 0).rows;
  const errors = levelErrors(rig, ranges);
  const [from = 0, to = from] = [ranges[0], ranges.at(-1)];
  const cutRanges = beyondTheHighestMark(rig, roundRanges({ from, to }, session.units, SLOPE_RANGES));
  const marks = sureMarks(session, ranges);
  return {
    session,
    crosswind,
    touching: touchingFrom(rig, marks, si(toSi(1, session.units.range))),
    rows: marks.flatMap((mark, i) => {
      const pin = at(sighted.pins, i);
      const launch = launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed);
      return shotRows(rig.conditions, launch, [mark.mark.range]).map(({ time, speed, energy, momentum }) => ({
        ...mark,
        time,
        speed,
        energy,
        momentum,
        windDrift: at(wind, i).lateral,
        lateralPerRadian: at(errors, i).lateralPerRadian,
      }));
    }),
    slopes: cutRanges.length === 0 ? [] : slopeMarks(rig, cutRanges, slopes),
  };
}

/** Nearer than the highest mark, marks turn back and a cut means nothing. */
const beyondTheHighestMark = (rig: Rig, ranges: readonly Metres[]): readonly Metres[] =>
  marksFor(rig, ranges)
    .marks.filter(({ range, highest }) => highest.range < range)
    .map(({ range }) => range);
