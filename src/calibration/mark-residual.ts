import { equalFlyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { type Metres, si } from '../quantities/quantity.ts';
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
    const { heightPerTravel } = at(marksFor(rig, [measurement.range], equalFlyer).marks, 0);
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

/** A pencil line on the strip. */
export interface PencilResidual {
  readonly residual: Residual;
  /** From the line of the zero range, positive to longer ranges. */
  readonly onTape: Metres;
  /** Where the line would be had the mark been as the fit says. */
  readonly predicted: Metres;
}

/** The pencil lines, a miss of height turned into a place on the strip as `markResiduals` turns it into a reading. */
export function pencilResiduals({ rig, values, residuals }: Calibration): readonly PencilResidual[] {
  const { tape_ratio: ratio } = values;
  if (ratio === undefined) return [];
  return residuals.flatMap((residual): readonly PencilResidual[] => {
    const { measurement } = residual;
    if (measurement.kind !== 'pencil') return [];
    const { heightPerTravel } = at(marksFor(rig, [measurement.range], equalFlyer).marks, 0);
    const onTape = si<'m'>(measurement.onTape);
    return [{ residual, onTape, predicted: si(onTape + (residual.residual * ratio) / heightPerTravel) }];
  });
}
