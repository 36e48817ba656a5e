import { type SlopeMark, slopeMarks } from '../../advice/range/slope.ts';
import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { defaultOf } from '../../setup/assemble/defaults.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { readingAt } from '../../sight/scale.ts';
import { sliderOf } from '../slider.ts';

/** What the round number of a row counts: from the foot of the stand, or what a rangefinder reads. */
export type CountedAlong = 'ground' | 'line';

/** One shot down from a stand onto level ground. */
export interface StandRow {
  readonly along: CountedAlong;
  /** Of the stand's floor above the ground. */
  readonly stand: Metres;
  /** From the foot of the stand. */
  readonly ground: Metres;
  readonly mark: SlopeMark;
  /** Of the sight's scale, for the pin that hits; null where the highest mark is too low for it, and without a scale. */
  readonly reading: number | null;
}

export interface StandFindings {
  /** Of the eye above the floor. */
  readonly eye: Metres;
  /** Of the spot aimed at above the ground. */
  readonly spot: Metres;
  /** By stand, then what is counted, then range. */
  readonly rows: readonly StandRow[];
}

export interface StandAsked {
  readonly stands: readonly Metres[];
  readonly ranges: readonly Metres[];
  readonly spot: Metres;
}

/** An eye higher than this above the ground, m, stands in a tree already: no archer is so tall. */
const TALLEST_EYE = 2.2;
/** Nearer to the plumb line nobody shoots, and no mark is solved. */
const STEEPEST = Math.sin(1.3); // of 74 degrees

/** Shots from every stand, along the ground and along the line of sight; those all but straight down are left out. */
export function standFindings(
  session: Pick<OpenSetup, 'setup' | 'calibration'>,
  { stands, ranges, spot }: StandAsked,
): StandFindings {
  const { rig } = session.calibration;
  const stated = session.setup.eye_height;
  const eye = stated === undefined || stated > TALLEST_EYE ? defaultOf('eye_height') : stated;
  const rowsOf = (stand: Metres, along: CountedAlong): readonly StandRow[] => {
    const down = stand + eye - spot;
    return ranges.flatMap((range) => {
      const line = along === 'line' ? range : Math.hypot(range, down);
      if (line * STEEPEST < Math.abs(down)) return [];
      const mark = at(slopeMarks(rig, [line], [-Math.asin(down / line)], sliderOf(session)), 0);
      return [
        {
          along,
          stand,
          ground: along === 'ground' ? range : si(Math.sqrt(line ** 2 - down ** 2)),
          mark,
          reading: rig.scale === null || mark.markRange === null ? null : readingAt(rig.scale, mark.travel),
        },
      ];
    });
  };
  return {
    eye,
    spot,
    rows: stands.flatMap((stand) => [...rowsOf(stand, 'ground'), ...rowsOf(stand, 'line')]),
  };
}
