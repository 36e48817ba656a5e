import { type SquareMetres, si } from '../quantities/quantity.ts';
import { type BoundaryLayer, bodyFriction, immersion, type LongBody } from './boundary-layer.ts';
import { bladeFin, signedAngle, vaneFin } from './fins.ts';
import { turbulentPlate } from './friction.ts';
import { finSlope } from './normal-force.ts';
import type { ArrowParts, LeadingEdge, Point, TrailingEdge, Vanes } from './parts.ts';
import { collarDiameter, nockLength } from './pieces.ts';
import { bodyInterference, spinPerMetre } from './spin.ts';
import { chordRadiusSquared, finArea, meanChordHeight, type TrapezoidFin } from './trapezoid-fin.ts';

export type DragSource =
  | 'shaft-friction'
  | 'vane-friction'
  | 'vane-edges'
  | 'helical'
  | 'point'
  | 'blades'
  | 'collar'
  | 'base';

/** One term of the build-up. */
export interface DragTerm {
  readonly name: DragSource;
  /** On the shaft's cross-section. */
  readonly coefficient: number;
  /** The Reynolds number the term's own law takes, on the length that law names. */
  readonly reynolds: number;
  /** The area the term's own coefficient is on. */
  readonly area: SquareMetres;
  /** Where the law comes from. */
  readonly source: string;
}

/**
 * Standard uncertainty of the whole build-up, relative.
 *
 * @source spread of published arrow drag against build-ups of this kind; a judgement
 */
export const DRAG_UNCERTAINTY = 0.15;

/** Suction on a flat base, and on a square rear edge, as a coefficient on its own area. @source Fleeman, Tactical Missile Design, at low speed */
const BASE = 0.12;

/** @source Hoerner, Fluid-Dynamic Drag, chapter 3, at low speed: a square edge is a flat face, a round one costs nothing */
const LEADING_EDGE: Readonly<Record<LeadingEdge, number>> = { square: 0.85, round: 0 };
/** @source Niskanen, 2013, section 3.4: a rounded edge has half of a base's suction, a tapered one none */
const TRAILING_EDGE: Readonly<Record<TrailingEdge, number>> = { square: BASE, round: BASE / 2, tapered: 0 };

/** Share of a point's visible length that tapers, for shapes that end in a cone. Common practice, no source. */
const FIELD_TAPER = 0.4;

/** Wetted area of a point over that of a cylinder of its visible length: 0.5 for a cone, 0.67 for a paraboloid. */
const POINT_WETTED = 0.6;

/**
 * Every term of the drag at zero incidence. The sum of the coefficients is the arrow's, on pi d^2 / 4.
 *
 * The vanes' own layer is turbulent in every state: a vane is thicker than the wire that trips a layer (0.06 mm at 60 m/s) and
 * its Reynolds number is above the 6e4 below which nothing can. Below about 25 m/s that asks too much of a small vane.
 *
 * @param layer state of the layer along the shaft
 * @param reynolds on the shaft's diameter, above 0
 * @checked reference/arrow-drag
 */
export function dragTerms(parts: ArrowParts, layer: BoundaryLayer, reynolds: number): readonly DragTerm[] {
  const diameter = parts.shaft.outerDiameter;
  const section = (Math.PI / 4) * diameter ** 2;
  const body = longBody(parts);
  const place: Place = { section, perMetre: reynolds / diameter };
  return [
    shaftFriction(parts, body, layer, place),
    ...vaneTerms(parts, body, layer, place),
    pointTerm(parts.point, diameter, place),
    ...bladeTerms(parts, place),
    ...collarTerm(parts, place),
    term('base', BASE * section, diameter, section, place, 'Fleeman: suction on a flat base, low speed'),
  ];
}

/** The sum of the terms. */
export const dragCoefficient = (parts: ArrowParts, layer: BoundaryLayer, reynolds: number): number =>
  dragTerms(parts, layer, reynolds).reduce((sum, { coefficient }) => sum + coefficient, 0);

/** What every term needs: the cross-section, and Reynolds number per metre of length. */
interface Place {
  readonly section: number;
  readonly perMetre: number;
}

/** @param dragArea drag force / dynamic pressure @param length the Reynolds number's */
const term = (
  name: DragSource,
  dragArea: number,
  length: number,
  area: number,
  { section, perMetre }: Place,
  source: string,
): DragTerm => ({
  name,
  coefficient: dragArea / section,
  reynolds: perMetre * length,
  area: si(area),
  source,
});

const rearOfTip = ({ point, shaft, nock }: ArrowParts) => point.length + shaft.length + nockLength(nock);

function longBody(parts: ArrowParts): LongBody {
  const length = rearOfTip(parts);
  const { vanes } = parts;
  const trip = vanes === undefined ? length : length - vanes.fromNock - vanes.rootChord;
  return { length, diameter: parts.shaft.outerDiameter, trip };
}

function shaftFriction(parts: ArrowParts, body: LongBody, layer: BoundaryLayer, place: Place): DragTerm {
  const reynolds = place.perMetre * body.diameter;
  const area = Math.PI * body.diameter * (body.length - (1 - POINT_WETTED) * parts.point.length);
  return term(
    'shaft-friction',
    bodyFriction(body, layer, reynolds) * area,
    body.length,
    area,
    place,
    'plate friction (Schlichting) with long-cylinder terms (Seban, Bond and Kelly; Hoerner)',
  );
}

/** Friction of both sides of N thin plates, turbulent: 2 Cf (1 + 2 t / c) N A. @source Mandell, Caporaso and Bengen, 1973, chapter 3 */
export function plateFriction(area: number, thickness: number, chord: number, friction: number): number {
  return 2 * friction * (1 + (2 * thickness) / chord) * area;
}

const meanChord = (fin: TrapezoidFin) => finArea(fin) / fin.height;

function vaneTerms(parts: ArrowParts, body: LongBody, layer: BoundaryLayer, place: Place): DragTerm[] {
  const { vanes } = parts;
  if (vanes === undefined) return [];
  const fin = vaneFin(vanes, body.diameter / 2);
  const chord = meanChord(fin);
  const area = vanes.count * finArea(fin);
  const share = immersion(body, layer, place.perMetre * body.diameter, body.trip, fin.height);
  const friction = plateFriction(area, vanes.thickness, chord, turbulentPlate(place.perMetre * chord));
  const edges = vanes.count * vanes.thickness * fin.height;
  return [
    term(
      'vane-friction',
      share * friction,
      chord,
      2 * area,
      place,
      "turbulent plate (Schlichting), thickness (Mandell and others), in the shaft's layer (momentum balance)",
    ),
    term(
      'vane-edges',
      share * edgeCoefficient(vanes, fin) * edges,
      vanes.thickness,
      edges,
      place,
      'leading edge (Hoerner), trailing edge (Niskanen)',
    ),
    term('helical', helicalCost(vanes, fin), chord, area, place, 'vane lift times incidence at settled spin'),
  ];
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

function pointTerm(point: Point, diameter: number, place: Place): DragTerm {
  const { coefficient, source } = pointPressure(point, diameter);
  return term('point', coefficient * place.section, diameter, place.section, place, source);
}

/** Pressure drag of the point on the shaft's cross-section; its friction counts with the shaft's. */
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

function bladeTerms({ point, shaft }: ArrowParts, place: Place): DragTerm[] {
  const blades = bladeFin(point, shaft.outerDiameter / 2);
  if (blades === null) return [];
  const { fin, count, thickness } = blades;
  const area = count * finArea(fin);
  const chord = meanChord(fin);
  const friction = plateFriction(area, thickness, chord, turbulentPlate(place.perMetre * chord));
  const edges = BASE * count * thickness * fin.height;
  return [
    term(
      'blades',
      friction + edges,
      chord,
      2 * area,
      place,
      'turbulent plate (Schlichting), ground front edges, square rear',
    ),
  ];
}

function collarTerm({ collar, shaft }: ArrowParts, place: Place): DragTerm[] {
  if (collar === undefined) return [];
  const diameter = collarDiameter(collar, shaft);
  const step = Math.max(0, (Math.PI / 4) * diameter ** 2 - place.section);
  const pressure = 0.2 + BASE;
  return [
    term(
      'collar',
      pressure * step,
      diameter,
      step,
      place,
      'step with rounded edges (Hoerner) and a base behind',
    ),
  ];
}
