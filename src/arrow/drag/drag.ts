import { oncePer } from '../../numerics/once.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import type { ArrowParts } from '../parts/parts.ts';
import { referenceArea } from '../reference-area.ts';
import { type BoundaryLayer, bodyFriction, type LongBody } from './boundary-layer.ts';
import { BASE_SUCTION, type DragTerm, type FlowScale, term } from './drag-term.ts';
import { longBody } from './long-body.ts';
import { pointTerms } from './point-drag.ts';
import { vaneTerms } from './vane-drag.ts';

/**
 * Standard uncertainty of the whole build-up, relative.
 *
 * @source spread of published arrow drag against build-ups of this kind; a judgement
 */
export const DRAG_UNCERTAINTY = 0.15;

/**
 * Wetted area of a point over that of a cylinder of its visible length: 0.5 for a cone, 0.67 for a paraboloid, by geometry;
 * between the two an assumption, worth 0.2 % of the sum.
 */
const POINT_WETTED = 0.6;

/**
 * Every term of the drag at zero incidence. The sum of the coefficients is the arrow's, on pi d^2 / 4.
 *
 * @param layer state of the layer along the shaft
 * @param reynolds on the shaft's diameter, above 0
 * @throws DomainError for another Reynolds number
 * @checked reference/arrow-drag
 */
export function dragTerms(parts: ArrowParts, layer: BoundaryLayer, reynolds: number): readonly DragTerm[] {
  if (!(reynolds > 0)) throw new DomainError('Reynolds number', reynolds, 'above 0');
  const diameter = parts.shaft.outerDiameter;
  const section = referenceArea(diameter);
  const { body, vanes } = shapesOf(parts);
  const scale: FlowScale = { section, perMetre: reynolds / diameter };
  return [
    shaftFriction(parts, body, layer, scale),
    ...(vanes === null ? [] : vanes(layer, scale)),
    ...pointTerms(parts, scale),
    term(
      'base',
      BASE_SUCTION * section,
      diameter,
      section,
      scale,
      'Fleeman: suction on a flat base, low speed',
    ),
  ];
}

/** What no speed changes: the drag of one arrow is asked for at hundreds of them. */
const shapesOf = oncePer((parts: ArrowParts) => {
  const body = longBody(parts);
  return { body, vanes: parts.vanes === undefined ? null : vaneTerms(parts.vanes, body) };
});

/** The sum of the terms. */
export const dragCoefficient = (parts: ArrowParts, layer: BoundaryLayer, reynolds: number): number =>
  dragTerms(parts, layer, reynolds).reduce((sum, { coefficient }) => sum + coefficient, 0);

function shaftFriction(parts: ArrowParts, body: LongBody, layer: BoundaryLayer, scale: FlowScale): DragTerm {
  const reynolds = scale.perMetre * body.diameter;
  const area = Math.PI * body.diameter * (body.length - (1 - POINT_WETTED) * parts.point.length);
  return term(
    'shaft-friction',
    bodyFriction(body, layer, reynolds) * area,
    body.length,
    area,
    scale,
    'plate friction (Schlichting) with long-cylinder terms (Seban, Bond and Kelly; Hoerner)',
  );
}
