import { at } from '../numerics/at.ts';
import { marksFor } from '../sight/marks.ts';
import type { Calibration, Residual } from './fit.ts';

/** A shot mark in the units of the scale. */
export interface MarkResidual {
  readonly residual: Residual;
  readonly reading: number;
  /** What the scale would have read had the mark been as the fit says. */
  readonly predicted: number;
}

/**
 * The shot marks in the units of the scale; none for a sight without one.
 *
 * A miss of height says what the reading should have been, through how far a unit of the scale moves the hit: its residual over
 * (height per metre of travel) x (travel per unit), with the sign of the direction in which the numbers grow.
 */
export function markResiduals({ rig, residuals }: Calibration): readonly MarkResidual[] {
  const { scale } = rig;
  if (scale === null) return [];
  return residuals.flatMap((residual): readonly MarkResidual[] => {
    const { measurement } = residual;
    if (measurement.kind !== 'mark') return [];
    const { heightPerTravel } = at(marksFor(rig, [measurement.range]).marks, 0);
    const heightPerUnit = heightPerTravel * scale.travelPerUnit * scale.direction;
    return [
      {
        residual,
        reading: measurement.reading,
        predicted: measurement.reading + residual.residual / heightPerUnit,
      },
    ];
  });
}
