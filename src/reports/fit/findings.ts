import type { Residual } from '../../calibration/fit.ts';
import { type MarkResidual, markResiduals } from '../../calibration/mark-residual.ts';
import { type NextRange, nextRange } from '../../calibration/next-range.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { defaultOf } from '../../setup/assemble/defaults.ts';
import type { Session } from '../session.ts';

/** The group to be shot next is thought of as this many arrows. */
export const NEXT_ARROWS = 6;

/** Everything the command `fit` found. */
export interface FitFindings {
  readonly session: Session;
  readonly marks: readonly MarkResidual[];
  /** Chronograph readings and drops. */
  readonly others: readonly Residual[];
  readonly next: NextRange;
  /** The ranges the tape is to serve. */
  readonly ranges: readonly Metres[];
  /** What was written. */
  readonly files: readonly string[];
}

export function fitFindings(session: Session, ranges: readonly Metres[]): FitFindings {
  const { residuals } = session.calibration;
  return {
    session,
    marks: markResiduals(session.calibration),
    others: residuals.filter(({ measurement }) => measurement.kind !== 'mark'),
    next: nextRange(session.calibration, ranges, {
      arrows: NEXT_ARROWS,
      arrowSdPerRange: defaultOf('marks.arrow_spread'),
    }),
    ranges,
    files: [],
  };
}
