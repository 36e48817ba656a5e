import { referenceArea } from '../arrow/reference-area.ts';
import { STANDARD_GRAVITY } from '../quantities/exact.ts';
import type { Rig } from '../sight/rig.ts';

/**
 * How steeply the arrow crosses the line of sight at a range it is sighted in for, m of height per m of range: what a wrong range
 * does to a mark's height.
 *
 *   y = -h + a R - (g/v²) (exp 2ks - 1 - 2ks)/4k² = 0,   dy/dR = a - (g/v²) (exp 2ks - 1)/2k
 *
 * h peep height, R range, s the part of it in free flight, v launch speed, k = ρ CD A/2m; a follows from the first. Drag grows
 * with the square of the speed and the path is flat: within 3 % of the flown one at 100 yd, which is enough for an error.
 *
 * @param range m from the eye
 */
export function slopeAtHit({ conditions, geometry, launchSpeed: v }: Rig, range: number): number {
  const { arrow, air } = conditions;
  const s = Math.max(range - geometry.freeFlight, SHORTEST);
  const reynolds = (air.density * v * arrow.diameter) / air.viscosity;
  const drag = arrow.drag.at(reynolds) * arrow.dragScale * referenceArea(arrow.diameter);
  const k = Math.max((air.density * drag) / (2 * arrow.mass), LEAST_DRAG);
  const lost = Math.expm1(2 * k * s);
  const g = STANDARD_GRAVITY / v ** 2;
  const fall = (g * (lost - 2 * k * s)) / (4 * k * k);
  return (geometry.peepHeight + fall) / range - (g * lost) / (2 * k);
}

/** Keeps the formula finite, m. */
const SHORTEST = 0.1;
/** Below this share of the speed lost in a metre the two exponentials cancel; the path is then a parabola to 1e-6, 1/m. */
const LEAST_DRAG = 1e-6;
