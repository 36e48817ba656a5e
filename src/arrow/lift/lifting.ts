import { type BoundaryLayer, immersion } from '../drag/boundary-layer.ts';
import { longBody } from '../drag/long-body.ts';
import type { ArrowParts, Point } from '../parts/parts.ts';
import { arrowLength } from '../parts/pieces.ts';
import { referenceArea } from '../reference-area.ts';
import { type BladeWake, bladeWake } from './blade-wake.ts';
import { type FinRing, finRing } from './fin-ring.ts';
import { bladeFin, signedAngle, vaneFin } from './fins.ts';
import { NOSE_SLOPE } from './normal-force.ts';
import { finCentreOfPressure } from './trapezoid-fin.ts';

/** Everything on the arrow that lifts. */
export interface LiftingSurfaces {
  readonly nose: { readonly slope: number; readonly place: number };
  readonly vanes: FinRing | null;
  readonly blades: FinRing | null;
  /** What the blades' wake takes of the vanes' lift; null without both. */
  readonly wake: BladeWake | null;
}

/**
 * Reynolds number on the diameter at which the layer along the shaft is taken: 85 m/s, 6 mm. Its thickness goes with the fifth
 * root of it.
 */
const USUAL_REYNOLDS = 35_000;

/** How the air around the shaft is taken. */
export interface LiftOptions {
  readonly boundaryLayer: BoundaryLayer;
  /** False leaves out what the shaft's layer and the blades' wake take of the vanes' lift: strips in free air. */
  readonly lossesCounted: boolean;
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
export function liftingSurfaces(
  parts: ArrowParts,
  { boundaryLayer, lossesCounted }: LiftOptions = { boundaryLayer: 'transition', lossesCounted: true },
): LiftingSurfaces {
  const { point, shaft } = parts;
  const front = arrowLength(parts);
  const section = referenceArea(shaft.outerDiameter);
  const vanes = vaneRing(parts, section, lossesCounted ? boundaryLayer : null);
  const blades = bladeRing(parts, front, section);
  return {
    nose: { slope: NOSE_SLOPE, place: front + point.length * (1 - NOSE_PLACE[point.shape]) },
    vanes,
    blades,
    wake: vanes === null || blades === null || !lossesCounted ? null : bladeWake(blades, vanes, section),
  };
}

/**
 * The ring of vanes. It stands in the shaft's layer for its lift as for its drag: strips lift by the dynamic pressure where
 * they are. Spin is settled by strips in the same air on both sides, so it is left as it is.
 *
 * @param layer null for vanes in free air
 */
function vaneRing(parts: ArrowParts, section: number, layer: BoundaryLayer | null): FinRing | null {
  const { vanes, shaft } = parts;
  if (vanes === undefined) return null;
  const fin = vaneFin(vanes, shaft.outerDiameter / 2);
  const body = longBody(parts);
  const share = layer === null ? 1 : immersion(body, layer, USUAL_REYNOLDS, body.trip, fin.height);
  const place = vanes.fromNock + vanes.rootChord - finCentreOfPressure(fin);
  return finRing(fin, { count: vanes.count, place, angle: signedAngle(vanes), immersion: share }, section);
}

function bladeRing({ point, shaft }: ArrowParts, front: number, section: number): FinRing | null {
  const blades = bladeFin(point, shaft.outerDiameter / 2);
  if (blades === null) return null;
  // By Barrowman half the blade behind its tip; slender wing theory has two thirds for a delta, 0.2 in nearer the balance
  // point: 1.5 % of the arm.
  const place = front + blades.fin.rootChord - finCentreOfPressure(blades.fin);
  return finRing(blades.fin, { count: blades.count, place, angle: 0, immersion: 1 }, section);
}
