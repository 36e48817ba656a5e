import { INCH } from '../../quantities/exact.ts';
import type { Blades, Point, Turn, Vanes } from '../parts/parts.ts';
import type { TrapezoidFin } from './trapezoid-fin.ts';

/** A vane as a trapezoid on the shaft. */
export const vaneFin = (vanes: Vanes, shaftRadius: number): TrapezoidFin => ({
  rootChord: vanes.rootChord,
  tipChord: vanes.tipChord,
  height: vanes.height,
  sweep: vanes.sweep ?? vanes.rootChord - vanes.tipChord,
  rootRadius: shaftRadius,
});

/** Sign of an angle of the vanes: right helical positive. */
const TURN_SIGN: Readonly<Record<Turn, number>> = { right: 1, left: -1, none: 0 };

/** Signed angle: right helical positive. */
export const signedAngle = ({ angle, turn }: Vanes): number => TURN_SIGN[turn] * angle;

/** A common three-blade head, for a fixed-blade point whose blades were not described. Common practice, no source. */
const USUAL_BLADES = {
  count: 3,
  length: 1.1 * INCH,
  cuttingDiameter: 1.125 * INCH,
  thickness: 0.03 * INCH,
};

export interface BladeFins {
  readonly fin: TrapezoidFin;
  readonly count: number;
  readonly thickness: number;
}

/** The blades of a fixed-blade head as triangles that end at the shaft; null for any other point. */
export function bladeFin(point: Point, shaftRadius: number): BladeFins | null {
  if (point.shape !== 'fixed_blade') return null;
  const blades: Pick<Blades, 'count'> & Record<'length' | 'cuttingDiameter' | 'thickness', number> =
    point.blades ?? USUAL_BLADES;
  const fin = {
    rootChord: blades.length,
    tipChord: 0,
    height: blades.cuttingDiameter / 2 - shaftRadius,
    sweep: blades.length,
    rootRadius: shaftRadius,
  };
  return { fin, count: blades.count, thickness: blades.thickness };
}
