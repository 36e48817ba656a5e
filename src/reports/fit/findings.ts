import type { Residual } from '../../calibration/fit.ts';
import { type NextRange, nextRange } from '../../calibration/next-range.ts';
import type { Metres } from '../../quantities/quantity.ts';
import { defaultOf } from '../../setup/assemble/defaults.ts';
import { marksFor } from '../../sight/marks.ts';
import type { Session } from '../session.ts';

/** The group to be shot next is thought of as this many arrows. */
export const NEXT_ARROWS = 6;

/** A shot mark in the units of the scale. */
export interface MarkResidual {
  readonly residual: Residual;
  readonly reading: number;
  readonly predicted: number;
}

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
    marks: residuals.flatMap((residual) => markResidual(session, residual)),
    others: residuals.filter(({ measurement }) => measurement.kind !== 'mark'),
    next: nextRange(session.calibration, ranges, {
      arrows: NEXT_ARROWS,
      arrowSdPerRange: defaultOf('marks.arrow_spread'),
    }),
    ranges,
    files: [],
  };
}

/** A miss of height says what the reading should have been, through how far a unit of the scale moves the hit. */
function markResidual({ calibration }: Session, residual: Residual): readonly MarkResidual[] {
  const { measurement } = residual;
  const { rig } = calibration;
  if (measurement.kind !== 'mark' || rig.scale === null) return [];
  const [mark] = marksFor(rig, [measurement.range]).marks;
  const heightPerUnit = (mark?.heightPerTravel ?? Number.NaN) * rig.scale.travelPerUnit * rig.scale.direction;
  return [
    {
      residual,
      reading: measurement.reading,
      predicted: measurement.reading + residual.residual / heightPerUnit,
    },
  ];
}
