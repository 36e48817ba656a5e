import { type ThirdAxisMiss, thirdAxisMisses } from '../../advice/lean/third-axis.ts';
import { type SlopeMark, slopeMarks } from '../../advice/range/slope.ts';
import { at } from '../../numerics/at.ts';
import type { Metres, Radians } from '../../quantities/quantity.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { readingAt } from '../../sight/scale.ts';
import { sliderOf } from '../slider.ts';

/** One shot up or down a slope. */
export interface SlopeRow {
  readonly mark: SlopeMark;
  /** Of the sight's scale, for the mark; null when it has none. */
  readonly reading: number | null;
  readonly third: ThirdAxisMiss;
}

/** The shot that the cosine rule gets most wrong, and the level range whose mark hits. */
export interface WorstCosine {
  readonly mark: SlopeMark;
  readonly set: Metres;
}

/** What slopes do to the marks, and what a level not square to the shot does on them. */
export interface SlopeFindings {
  readonly thirdAxis: Radians;
  /** By slope, then range; level ground left out. */
  readonly rows: readonly SlopeRow[];
  /** Null when every shot asks for a pin above the highest mark. */
  readonly worstCosine: WorstCosine | null;
  /** The shot that the third axis sends farthest to the side. */
  readonly worstThird: ThirdAxisMiss | null;
}

export function slopeFindings(
  session: OpenSetup,
  {
    ranges,
    slopes,
    thirdAxis,
  }: { readonly ranges: readonly Metres[]; readonly slopes: readonly number[]; readonly thirdAxis: Radians },
): SlopeFindings {
  const { rig } = session.calibration;
  const third = thirdAxisMisses(rig, thirdAxis, ranges, slopes);
  const rows = slopeMarks(rig, ranges, slopes, sliderOf(session)).map((mark, i) => ({
    mark,
    reading: rig.scale === null ? null : readingAt(rig.scale, mark.travel),
    third: at(third, i),
  }));
  return {
    thirdAxis,
    rows,
    worstCosine: worstCosine(rows.map(({ mark }) => mark)),
    worstThird: largest(third, ({ lateral }) => lateral),
  };
}

const worstCosine = (marks: readonly SlopeMark[]): WorstCosine | null =>
  largest(
    marks.flatMap((mark) => (mark.markRange === null ? [] : [{ mark, set: mark.markRange }])),
    ({ mark }) => mark.missByCosine,
  );

/** The first of the largest in size. */
const largest = <T>(all: readonly T[], size: (one: T) => number): T | null =>
  all.toSorted((a, b) => Math.abs(size(b)) - Math.abs(size(a)))[0] ?? null;
