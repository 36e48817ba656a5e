import { DEGREE } from '../../quantities/exact.ts';
import { si } from '../../quantities/quantity.ts';
import type { ArrowParts, Blades, Vanes } from './parts.ts';

/** Vanes set straight in place of those that turn the arrow; in place of straight ones, those of the usual helical. */
export const otherVanes = (vanes: Vanes): Vanes =>
  vanes.turn !== 'none' && vanes.angle > 0
    ? { ...vanes, angle: si(0), turn: 'none' }
    : { ...vanes, angle: USUAL_HELICAL, turn: 'right' };

/** Of the vanes against the shaft. Common practice, no source. */
const USUAL_HELICAL = si<'rad'>(3 * DEGREE);

/** The same weight and length in front: as a field point, or with fixed blades (the usual ones where none are given). */
export const withPoint = (
  parts: ArrowParts,
  shape: 'field' | 'fixed_blade',
  blades?: Blades,
): ArrowParts => ({
  ...parts,
  point: { ...parts.point, shape, blades },
});

/** The same parts with the usual fixed blades in front; unchanged where there are blades already. */
export const withUsualBlades = (parts: ArrowParts): ArrowParts =>
  parts.point.shape === 'fixed_blade' ? parts : withPoint(parts, 'fixed_blade');
