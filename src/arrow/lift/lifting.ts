import type { ArrowParts, Point } from '../parts/parts.ts';
import { arrowLength } from '../parts/pieces.ts';
import { bladeFin, signedAngle, vaneFin } from './fins.ts';
import { finRingSlope, finSlope, NOSE_SLOPE } from './normal-force.ts';
import { bodyInterference, type RollInterference } from './spin.ts';
import { finArea, finCentreOfPressure, type TrapezoidFin } from './trapezoid-fin.ts';

/** A ring of equal fins, with what a model that follows each strip needs. */
export interface FinRing {
  readonly count: number;
  readonly fin: TrapezoidFin;
  /** Normal-force slope of one fin on its own area, without the body. */
  readonly slope: number;
  /** Normal-force slope of the ring on pi d^2 / 4, with the body. */
  readonly ringSlope: number;
  /** Where its force acts, from the bottom of the nock groove. */
  readonly place: number;
  /** To the shaft, right helical positive. */
  readonly angle: number;
  readonly roll: RollInterference;
}

/** Everything on the arrow that lifts. */
export interface LiftingSurfaces {
  readonly nose: { readonly slope: number; readonly place: number };
  readonly vanes: FinRing | null;
  readonly blades: FinRing | null;
}

/**
 * Centre of pressure of a nose behind its tip, as a share of its length: cone 2/3, ogive 0.466, flat face 0.
 *
 * @source Barrowman, 1966
 */
export const NOSE_PLACE: Readonly<Record<Point['shape'], number>> = {
  field: 2 / 3,
  bullet: 0.466,
  blunt: 0,
  mechanical: 2 / 3,
  fixed_blade: 2 / 3,
};

/** The lifting surfaces of the parts, placed from the bottom of the nock groove. */
export function liftingSurfaces(parts: ArrowParts): LiftingSurfaces {
  const { point, shaft, vanes } = parts;
  const front = arrowLength(parts);
  const radius = shaft.outerDiameter / 2;
  const section = Math.PI * radius ** 2;
  const blades = bladeFin(point, radius);
  return {
    nose: { slope: NOSE_SLOPE, place: front + point.length * (1 - NOSE_PLACE[point.shape]) },
    vanes:
      vanes === undefined
        ? null
        : finRing(
            vaneFin(vanes, radius),
            vanes.count,
            vanes.fromNock + vanes.rootChord,
            signedAngle(vanes),
            section,
          ),
    blades:
      blades === null ? null : finRing(blades.fin, blades.count, front + blades.fin.rootChord, 0, section),
  };
}

function finRing(
  fin: TrapezoidFin,
  count: number,
  rootFront: number,
  angle: number,
  section: number,
): FinRing {
  return {
    count,
    fin,
    slope: finSlope(fin, finArea(fin)),
    ringSlope: finRingSlope(fin, count, section),
    place: rootFront - finCentreOfPressure(fin),
    angle,
    roll: bodyInterference(fin),
  };
}
