import { monotoneCubic, uniformCubic } from '../../numerics/interpolate.ts';
import { DomainError } from '../../quantities/domain-error.ts';
import type { DragCurve } from '../flying-arrow.ts';
import type { ArrowParts } from '../parts/parts.ts';
import type { BoundaryLayer } from './boundary-layer.ts';
import { dragCoefficient } from './drag.ts';

/** A drag coefficient at a Reynolds number on the shaft's diameter. */
export interface DragPoint {
  readonly reynolds: number;
  readonly coefficient: number;
}

/** The same coefficient at every speed. @throws DomainError unless above 0 and below 20 */
export function constantDrag(coefficient: number): DragCurve {
  requireCoefficient(coefficient);
  return { at: () => coefficient };
}

/**
 * A monotone curve through measured points, constant beyond the ends.
 *
 * @param points one or more, Reynolds numbers increasing
 * @throws DomainError for coefficients outside 0 to 20 or Reynolds numbers that do not increase
 */
export function tabulatedDrag(points: readonly DragPoint[]): DragCurve {
  for (const { coefficient } of points) requireCoefficient(coefficient);
  const [first] = points;
  if (first === undefined) throw new DomainError('number of drag points', 0, '1 or more');
  if (points.length === 1) return constantDrag(first.coefficient);
  const at = monotoneCubic(
    points.map(({ reynolds }) => reynolds),
    points.map(({ coefficient }) => coefficient),
  );
  return { at };
}

/** Spacing and end of the table: from rest to 160 m/s for a 9 mm shaft. */
const REYNOLDS_STEP = 500;
const LAST_REYNOLDS = 100_000;
/**
 * Rounds the build-up off towards rest, where friction coefficients grow without limit. Rounding and table together move
 * the curve by under 2e-4 of itself above a Reynolds number of 6000 (15 m/s), under 5e-5 in an arrow's flight.
 */
const REYNOLDS_AT_REST = 150;

/** The build-up of the parts, tabulated once; at four times the spacing it is right to a thousandth in flight. */
export function builtUpDrag(parts: ArrowParts, layer: BoundaryLayer, step = REYNOLDS_STEP): DragCurve {
  const values = Array.from({ length: LAST_REYNOLDS / step + 1 }, (_, i) =>
    dragCoefficient(parts, layer, Math.hypot(i * step, REYNOLDS_AT_REST)),
  );
  return { at: uniformCubic(0, step, values) };
}

function requireCoefficient(coefficient: number): void {
  if (!(coefficient > 0 && coefficient < 20))
    throw new DomainError('drag coefficient', coefficient, 'above 0 and below 20');
}
