import { OUTLIER } from '../../calibration/disagreement.ts';
import type { Calibration } from '../../calibration/fit.ts';
import { isSightMark } from '../../calibration/sight-mark.ts';
import { INCH } from '../../quantities/exact.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { archerSpread } from '../../setup/assemble/archer-spread.ts';
import { type HasShots, shotsIn } from '../../setup/assemble/shots.ts';
import type { OpenSetup } from '../../setup/open.ts';

/** Where the next group can be shot. */
export interface Shootable {
  /** m, the nearest first; at least one. */
  readonly candidates: readonly Metres[];
  readonly isOnTarget: (range: Metres, markSd: Metres) => boolean;
  /** The ranges to begin with where nothing was shot yet; else none. */
  readonly begin: readonly Metres[];
}

/** A group is looked for at most this many times as far as the farthest that was hit (common practice, no source). */
const FARTHER = 1.5;
/** Half of a target of 4 ft; two standard deviations of an arrow keep within it. */
const HALF_TARGET = 24 * INCH;
const WITHIN = 2;
/** Where to begin, in the unit of ranges: what nearly every archer hits without a mark (common practice, no source). */
const BEGIN = [20, 30] as const;

/**
 * Of the ranges that a tape is to serve, those where a group can be shot: not farther than half as far again as the farthest mark
 * that was hit, and not beyond the end of the archer's own range.
 *
 * @param whole what a whole range is counted in, m: a yard or a metre
 */
export function shootable(
  { setup, calibration, uncalibrated }: Pick<OpenSetup, 'setup' | 'calibration' | 'uncalibrated'>,
  ranges: readonly Metres[],
  whole: Metres,
): Shootable {
  const { range_length: length } = setup.sight;
  // What was left aside on purpose counts as not shot.
  const farthest = farthestHit(uncalibrated ? {} : setup, calibration);
  const spread = archerSpread({ setup });
  const isOnTarget = (range: Metres, markSd: Metres): boolean =>
    WITHIN * Math.hypot(markSd, spread * range) <= HALF_TARGET;
  const reaches = (limit: number): readonly Metres[] => {
    const end = Math.min(limit, length ?? limit);
    const near = ranges.filter((range) => range <= end + ROUNDING);
    return near.length > 0 ? near : [si(Math.max(1, Math.floor(end / whole + ROUNDING)) * whole)];
  };
  if (farthest !== null) return { candidates: reaches(FARTHER * farthest), isOnTarget, begin: [] };
  const begin = BEGIN.map((count) => si<'m'>(count * whole)).filter(
    (range) => range <= (length ?? range) + ROUNDING,
  );
  const from = begin.length > 0 ? begin : reaches(BEGIN[0] * whole).slice(0, 1);
  return { candidates: from.slice(0, 1), isOnTarget: () => true, begin: from };
}

/** What adding up leaves of a whole range, m. */
const ROUNDING = 1e-6;

/** The farthest mark whose group was where the others say, or was shot with a scale that nothing can be read from yet. */
function farthestHit(setup: HasShots, { residuals }: Calibration): number | null {
  const hit = residuals.flatMap(({ measurement, studentised }) =>
    isSightMark(measurement) && Math.abs(studentised) <= OUTLIER ? [measurement.range] : [],
  );
  const shot = residuals.length > 0 ? [] : shotsIn(setup).marks.map(({ range }) => range);
  const all = [...hit, ...shot];
  return all.length === 0 ? null : Math.max(...all);
}
