import { at } from '../numerics/at.ts';
import { inverseColumn } from '../numerics/cholesky.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import { type Metres, si } from '../quantities/quantity.ts';
import { marksFor } from '../sight/marks.ts';
import { OUTLIER } from './disagreement.ts';
import type { Calibration } from './fit.ts';
import { type MarkUncertainty, markUncertainty } from './mark-uncertainty.ts';
import { isSightMark, type SightMark } from './sight-mark.ts';
import { heightPerWritten } from './would-read.ts';

/** A wrong reading, or a wrong line on a strip, that these marks would not show, and what it would do far out. */
export interface UnseenSlip {
  /** Of the mark that it would do the most harm in. */
  readonly range: Metres;
  readonly mark: SightMark;
  /** How many numbers of the scale the reading could be off, or metres on the strip; null where any would go unseen. */
  readonly numbers: number | null;
  /** On the target at the far range, for that many, or for one number or one millimetre where any would go unseen. */
  readonly shift: Metres;
  readonly farRange: Metres;
  /** The standard uncertainty that the far mark is said to have, on the target. */
  readonly farSd: Metres;
}

/** One number of a scale, and one millimetre of a strip. */
const ONE_OF = { mark: 1, pencil: 0.001 } as const;
/** A shift this large is no limit: nothing holds the mark, m. */
const NOTHING_HOLDS = 2;

/**
 * The largest slip in one reading that these marks would not show, of the mark in which it would move the far range most.
 *
 *   |t| < 3 as long as  d < 3/√(e' M e),   M = V^-1 - V^-1 J C J' V^-1;   it moves the far mark by  g' C J' V^-1 e d
 *
 * d the slip as height on the target, e the mark's place among the measurements, V their covariance, J their derivatives by the
 * unknowns, C the covariance of those, g the far mark's gradient: the fit taken as straight.
 *
 * @param known how sure marks of the calibration are, where that has been worked out
 * @returns null where there are no marks of a scale or a strip, or none would move the far range
 */
export function unseenSlip(
  calibration: Calibration,
  farRange: Metres,
  known: readonly MarkUncertainty[] = [],
): UnseenSlip | null {
  const { problem, rig } = calibration;
  const shot = problem.measurements.flatMap((mark, index) => (isSightMark(mark) ? [{ index, mark }] : []));
  if (shot.length === 0) return null;
  const far =
    known.find(({ range }) => range === farRange) ??
    at(markUncertainty(calibration, marksFor(rig, [farRange])), 0);
  const perNumber = (mark: SightMark): number => Math.abs(heightPerWritten(calibration, mark));
  // What a number is on the target costs flights, and is asked only where it decides or is told.
  const slips = shot.map(({ index, mark }) => {
    const { unseen, shiftPer } = inHeight(calibration, index, far);
    const isLimited = unseen * shiftPer < NOTHING_HOLDS;
    const shift = shiftPer * (isLimited ? unseen : perNumber(mark) * ONE_OF[mark.kind]);
    return { mark, unseen, isLimited, shift };
  });
  const [worst] = slips
    .filter(({ shift }) => shift > 0)
    .toSorted((a, b) => Number(a.isLimited) - Number(b.isLimited) || b.shift - a.shift);
  if (worst === undefined) return null;
  const { mark, unseen, isLimited, shift } = worst;
  return {
    range: mark.range,
    mark,
    numbers: isLimited ? unseen / perNumber(mark) : null,
    shift: si(shift),
    farRange,
    farSd: far.onTargetSd,
  };
}

/** The largest height (m) of one measurement that goes unseen, and what a metre of it moves the far mark on the target. */
function inHeight({ linear }: Calibration, index: number, { gradient, heightPerUnit }: MarkUncertainty) {
  const { factor, jacobian, covariance } = linear;
  const alone = inverseColumn(factor, index);
  const size = alone.reduce((sum, value) => sum + value ** 2, 0);
  const pull = covariance.map((_, j) =>
    alone.reduce((sum, value, k) => sum + value * at(at(jacobian, k), j), 0),
  );
  const held = Math.max(0, size - quadraticForm(covariance, pull));
  const moved = gradient.reduce(
    (sum, slope, k) =>
      sum + slope * at(covariance, k).reduce((total, value, j) => total + value * at(pull, j), 0),
    0,
  );
  return { unseen: OUTLIER / Math.sqrt(held), shiftPer: Math.abs(moved * heightPerUnit) };
}
