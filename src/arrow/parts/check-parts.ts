import { DomainError } from '../../quantities/domain-error.ts';
import type { ArrowTotals } from '../arrow.ts';
import { bladeFin } from '../lift/fins.ts';
import type { ArrowParts, Vanes } from './parts.ts';
import { arrowLength, nockLength } from './pieces.ts';

function requireWithin(quantity: string, value: number, holds: boolean, allowed: string): void {
  if (!(holds && Number.isFinite(value))) throw new DomainError(quantity, value, allowed);
}
const requirePositive = (quantity: string, value: number) =>
  requireWithin(quantity, value, value > 0, 'above 0');
const requireNotNegative = (quantity: string, value: number) =>
  requireWithin(quantity, value, value >= 0, '0 or more');

/** Refuse measured totals that no arrow has. */
export function requireTotals({ mass, diameter, balance, length }: ArrowTotals): void {
  if (mass !== undefined) requirePositive('arrow mass (kg)', mass);
  if (diameter !== undefined) requirePositive('shaft diameter (m)', diameter);
  if (balance !== undefined) requirePositive('balance point (m)', balance);
  if (length !== undefined) requirePositive('arrow length (m)', length);
}

/** Refuse sizes with which the sums over the parts would lie. */
export function requireParts(parts: ArrowParts): void {
  const { shaft, insert, collar, point, nock, vanes, others = [] } = parts;
  requirePositive('shaft length (m)', shaft.length);
  requirePositive('shaft diameter (m)', shaft.outerDiameter);
  requirePositive('shaft mass per length (kg/m)', shaft.massPerLength);
  const { innerDiameter: inner, outerDiameter: outer } = shaft;
  requireWithin(
    'shaft inner diameter (m)',
    inner,
    inner >= 0 && inner < outer,
    `0 to below the outer, ${outer}`,
  );
  requireNotNegative('nock mass (kg)', nock.mass);
  requireNotNegative('nock length (m)', nockLength(nock));
  requireNotNegative('point mass (kg)', point.mass);
  requirePositive('point length (m)', point.length);
  const blades = bladeFin(point, outer / 2);
  if (blades !== null) {
    requireCount('number of blades', blades.count);
    requirePositive('blade length (m)', blades.fin.rootChord);
    requirePositive('blade height beyond the shaft (m)', blades.fin.height);
  }
  if (insert !== undefined) requireNotNegative('insert mass (kg)', insert.mass);
  if (collar !== undefined) requireNotNegative('collar mass (kg)', collar.mass);
  for (const { name, mass, fromNock } of others) {
    requireNotNegative(`mass of ${name} (kg)`, mass);
    requireWithin(`place of ${name} (m)`, fromNock, true, 'a finite place');
  }
  if (vanes !== undefined) requireVanes(vanes, arrowLength(parts));
}

const requireCount = (quantity: string, count: number) =>
  requireWithin(
    quantity,
    count,
    Number.isInteger(count) && count >= 1 && count <= 8,
    'a whole number, 1 to 8',
  );

function requireVanes(vanes: Vanes, length: number): void {
  requireCount('number of vanes', vanes.count);
  requireNotNegative('vane mass (kg)', vanes.mass);
  requirePositive('vane root chord (m)', vanes.rootChord);
  requireNotNegative('vane tip chord (m)', vanes.tipChord);
  requirePositive('vane height (m)', vanes.height);
  requireNotNegative('vane thickness (m)', vanes.thickness);
  requireWithin(
    'vane angle (rad)',
    vanes.angle,
    vanes.angle >= 0 && vanes.angle < MAX_VANE_ANGLE,
    `0 to ${MAX_VANE_ANGLE}`,
  );
  const front = vanes.fromNock + vanes.rootChord;
  requireWithin(
    'front of the vanes from the groove (m)',
    front,
    front > 0 && front < length,
    `0 to ${length}`,
  );
}

/** Strips stall beyond about 20 degrees, where the laws used here end. */
const MAX_VANE_ANGLE = 0.35;
