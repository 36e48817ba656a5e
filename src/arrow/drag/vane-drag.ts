import { signedAngle, vaneFin } from '../lift/fins.ts';
import { finSlope } from '../lift/normal-force.ts';
import { bodyInterference, spinPerMetre } from '../lift/spin.ts';
import {
  chordRadiusSquared,
  finArea,
  meanChord,
  meanChordHeight,
  type TrapezoidFin,
} from '../lift/trapezoid-fin.ts';
import type { LeadingEdge, TrailingEdge, Vanes } from '../parts/parts.ts';
import { type BoundaryLayer, immersion, type LongBody } from './boundary-layer.ts';
import { BASE_SUCTION, type DragTerm, type FlowScale, plateFriction, term } from './drag-term.ts';
import { turbulentPlate } from './friction.ts';

/** @source Hoerner, Fluid-Dynamic Drag, chapter 3, at low speed: a square edge is a flat face, a round one costs nothing */
const LEADING_EDGE: Readonly<Record<LeadingEdge, number>> = { square: 0.85, round: 0 };
/** @source Niskanen, 2013, section 3.4: a rounded edge has half of a base's suction, a tapered one none */
const TRAILING_EDGE: Readonly<Record<TrailingEdge, number>> = {
  square: BASE_SUCTION,
  round: BASE_SUCTION / 2,
  tapered: 0,
};

/**
 * What vanes cost: friction, edges, and the helical.
 *
 * Their own layer is turbulent in every state: a vane is thicker than the wire that trips a layer (0.06 mm at 60 m/s) and its
 * Reynolds number is above the 6e4 below which nothing can. Below about 25 m/s that asks too much of a small vane.
 *
 * @returns the terms in a layer and a flow
 */
export function vaneTerms(
  vanes: Vanes,
  body: LongBody,
): (layer: BoundaryLayer, scale: FlowScale) => readonly DragTerm[] {
  const fin = vaneFin(vanes, body.diameter / 2);
  const chord = meanChord(fin);
  const area = vanes.count * finArea(fin);
  const edges = vanes.count * vanes.thickness * fin.height;
  const edgeArea = edgeCoefficient(vanes, fin) * edges;
  const helical = helicalCost(vanes, fin);
  return (layer, scale) => {
    const share = immersion(body, layer, scale.perMetre * body.diameter, body.trip, fin.height);
    const friction = plateFriction(area, vanes.thickness, chord, turbulentPlate(scale.perMetre * chord));
    return [
      term(
        'vane-friction',
        share * friction,
        chord,
        2 * area,
        scale,
        "turbulent plate (Schlichting), thickness (Mandell and others), in the shaft's layer (momentum balance)",
      ),
      term(
        'vane-edges',
        share * edgeArea,
        vanes.thickness,
        edges,
        scale,
        'leading edge (Hoerner), trailing edge (Niskanen)',
      ),
      term('helical', helical, chord, area, scale, 'vane lift times incidence at settled spin'),
    ];
  };
}

function edgeCoefficient({ leadingEdge = 'round', trailingEdge = 'square' }: Vanes, fin: TrapezoidFin) {
  const sweepCosine = fin.height / Math.hypot(fin.height, fin.sweep);
  return LEADING_EDGE[leadingEdge] * sweepCosine ** 2 + TRAILING_EDGE[trailingEdge];
}

/** N a integral (delta - w' r)^2 c dr: at settled spin the roots still push one way and the tips the other. */
function helicalCost(vanes: Vanes, fin: TrapezoidFin): number {
  const area = finArea(fin);
  const angle = signedAngle(vanes);
  const spin = spinPerMetre(fin, angle, bodyInterference(fin));
  const first = area * (meanChordHeight(fin) + fin.rootRadius);
  const incidence2 = angle ** 2 * area - 2 * angle * spin * first + spin ** 2 * chordRadiusSquared(fin);
  return vanes.count * finSlope(fin, area) * incidence2;
}
