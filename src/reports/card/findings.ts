import { levelErrors } from '../../advice/lean/cant.ts';
import { type SlopeMark, slopeMarks } from '../../advice/range/slope.ts';
import { CLOCK, windEffects } from '../../advice/range/wind-drift.ts';
import { at } from '../../numerics/at.ts';
import type { Metres, MetresPerSecond } from '../../quantities/quantity.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { launchThrough } from '../../sight/geometry.ts';
import { marksFor } from '../../sight/marks.ts';
import { asFarAsItGoes, type Reach } from '../../sight/reach.ts';
import type { Rig } from '../../sight/rig.ts';
import { type ShotRow, shotRows } from '../../sight/shot.ts';
import { sightIn } from '../../sight/sighted.ts';
import { type SureMark, sureMarks, touchingFrom } from '../marks/findings.ts';
import { sliderOf } from '../slider.ts';
import { areTied, isToldSpread } from '../told-spread.ts';

/** What a card tells of one range, SI; the shot is of the arrow that arrives there with that mark set. */
export interface CardRow extends SureMark, Pick<ShotRow, 'time' | 'speed' | 'energy' | 'momentum'> {
  /** Standard uncertainty of the mark on the target; null when it is too wide to tell anything. */
  readonly toldSd: Metres | null;
  /** With the wind square from the left; right positive. */
  readonly windDrift: number;
  /** Sideways miss for each radian that the bow leans. */
  readonly lateralPerRadian: number;
}

/** The ranges at which the mark would lie below the zero of the scale, as far as the rows go. */
export interface BelowZero {
  readonly from: Metres;
  readonly to: Metres;
  readonly isToTheEnd: boolean;
}

/** Everything a card tells. */
export interface CardFindings {
  readonly crosswind: MetresPerSecond;
  readonly rows: readonly CardRow[];
  /** Of round ranges beyond the highest mark; by slope, then range. */
  readonly slopes: readonly SlopeMark[];
  readonly slopesReach: Reach;
  /** Whether the marks can be read on a scale of the sight. */
  readonly isScaled: boolean;
  /** Whether the marks are tied to the arrow well enough to tell how sure each of them is. */
  readonly isTied: boolean;
  /** Null when every reading is on the scale. */
  readonly belowZero: BelowZero | null;
  /** The first whole range at which the arrow would touch the sight; null when it never does. */
  readonly touching: Metres | null;
}

/** The farthest range of the rows. */
export const farthestOf = ({ rows }: Pick<CardFindings, 'rows'>): Metres =>
  at(rows, rows.length - 1).mark.range;

export interface CardQuestions {
  readonly ranges: readonly Metres[];
  /** rad; and the ranges to tell their cuts for, those nearer than the highest mark left out. */
  readonly slopes: readonly number[];
  readonly slopeRanges: readonly Metres[];
  readonly crosswind: MetresPerSecond;
  /** What a whole range is counted in: a yard or a metre. */
  readonly whole: Metres;
}

/** Straight from the left: the drift is to the right. */
const FROM_THE_LEFT = CLOCK.slice(9, 10);

export function cardFindings(
  opened: OpenSetup,
  { ranges, slopes, slopeRanges, crosswind, whole }: CardQuestions,
): CardFindings {
  const { rig } = opened.calibration;
  const sighted = sightIn(rig, ranges);
  const wind = at(windEffects(rig, crosswind, FROM_THE_LEFT, ranges), 0).rows;
  const errors = levelErrors(rig, ranges);
  const cutRanges = beyondTheHighestMark(rig, slopeRanges);
  const cuts =
    cutRanges.length === 0
      ? { solved: [], beyond: null, isHit: true }
      : asFarAsItGoes(rig, cutRanges, (reached) => slopeMarks(rig, reached, slopes, sliderOf(opened)));
  const rows = sureMarks(opened, ranges).map((sure, i): CardRow => {
    const launch = launchThrough(rig.geometry, at(sighted.pins, i), rig.cant, rig.launchSpeed);
    const { time, speed, energy, momentum } = at(shotRows(rig.conditions, launch, [sure.mark.range]), 0);
    const { onTargetSd } = sure.uncertainty;
    return {
      ...sure,
      time,
      speed,
      energy,
      momentum,
      toldSd: isToldSpread(onTargetSd) ? onTargetSd : null,
      windDrift: at(wind, i).lateral,
      lateralPerRadian: at(errors, i).lateralPerRadian,
    };
  });
  return {
    crosswind,
    rows,
    slopes: cuts.solved,
    slopesReach: cuts,
    isScaled: rig.scale !== null,
    isTied: areTied(rows.map(({ uncertainty }) => uncertainty.onTargetSd)),
    belowZero: belowZeroOf(rows),
    touching: touchingFrom(rig, rows, whole),
  };
}

/** Nearer than the highest mark, marks turn back and a cut means nothing. */
const beyondTheHighestMark = (rig: Rig, ranges: readonly Metres[]): readonly Metres[] =>
  marksFor(rig, ranges)
    .marks.filter(({ range, highest }) => highest.range < range)
    .map(({ range }) => range);

function belowZeroOf(rows: readonly SureMark[]): BelowZero | null {
  const below = rows.filter(({ mark }) => mark.reading !== null && mark.reading < 0);
  const [first, last] = [below[0], below.at(-1)];
  if (first === undefined || last === undefined) return null;
  return { from: first.mark.range, to: last.mark.range, isToTheEnd: last === rows.at(-1) };
}
