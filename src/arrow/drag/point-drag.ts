import { bladeFin } from '../lift/fins.ts';
import { finArea, meanChord } from '../lift/trapezoid-fin.ts';
import type { ArrowParts, Point } from '../parts/parts.ts';
import { collarDiameter } from '../parts/pieces.ts';
import { BASE_SUCTION, type DragTerm, type FlowScale, plateFriction, term } from './drag-term.ts';
import { turbulentPlate } from './friction.ts';

/** Share of a point's visible length that tapers, for shapes that end in a cone. Common practice, no source. */
const FIELD_TAPER = 0.4;

/** What the front end costs besides its friction, which counts with the shaft's: point, blades, collar. */
export const pointTerms = (parts: ArrowParts, scale: FlowScale): readonly DragTerm[] => [
  pointTerm(parts.point, parts.shaft.outerDiameter, scale),
  ...bladeTerms(parts, scale),
  ...collarTerm(parts, scale),
];

function pointTerm(point: Point, diameter: number, scale: FlowScale): DragTerm {
  const { coefficient, source } = pointPressure(point, diameter);
  return term('point', coefficient * scale.section, diameter, scale.section, scale, source);
}

/**
 * Pressure drag of the point on the shaft's cross-section; its friction counts with the shaft's.
 *
 * The laws are of other bodies, and what is said of arrowheads with them is assumed: that a field point tapers over 40 % of its
 * length and the stem between fixed blades over all of it (so it costs 0.007 where a field point costs 0.04), and that folded
 * blades cost what a face with rounded edges does. Each shape is therefore taken to be uncertain by 40 % of its own.
 */
function pointPressure({ shape, length }: Point, diameter: number): { coefficient: number; source: string } {
  const cone = (taper: number) => 0.8 * Math.sin(Math.atan2(diameter / 2, taper)) ** 2;
  switch (shape) {
    case 'bullet':
      return { coefficient: 0.01, source: 'hemisphere on a cylinder (Hoerner)' };
    case 'field':
      return {
        coefficient: cone(FIELD_TAPER * length),
        source: 'cone on a cylinder (Hoerner), 40 % of the length',
      };
    case 'fixed_blade':
      return { coefficient: cone(length), source: 'cone on a cylinder (Hoerner)' };
    case 'mechanical':
      return { coefficient: 0.2, source: 'face with rounded edges (Hoerner), for folded blades' };
    case 'blunt':
      return { coefficient: 0.85, source: 'flat face (Hoerner)' };
  }
}

/**
 * Of fixed blades. Assumed: front edges ground sharp cost nothing (square ones 0.03 in thick would add some 0.7 to the
 * coefficient), and nothing is lost where blade and stem meet.
 */
function bladeTerms({ point, shaft }: ArrowParts, scale: FlowScale): DragTerm[] {
  const blades = bladeFin(point, shaft.outerDiameter / 2);
  if (blades === null) return [];
  const { fin, count, thickness } = blades;
  const area = count * finArea(fin);
  const chord = meanChord(fin);
  const friction = plateFriction(area, thickness, chord, turbulentPlate(scale.perMetre * chord));
  const edges = BASE_SUCTION * count * thickness * fin.height;
  return [
    term(
      'blades',
      friction + edges,
      chord,
      2 * area,
      scale,
      'turbulent plate (Schlichting), ground front edges, square rear',
    ),
  ];
}

function collarTerm({ collar, shaft }: ArrowParts, scale: FlowScale): DragTerm[] {
  if (collar === undefined) return [];
  const diameter = collarDiameter(collar, shaft);
  const step = Math.max(0, (Math.PI / 4) * diameter ** 2 - scale.section);
  const pressure = 0.2 + BASE_SUCTION;
  return [
    term(
      'collar',
      pressure * step,
      diameter,
      step,
      scale,
      'step with rounded edges (Hoerner) and a base behind',
    ),
  ];
}
