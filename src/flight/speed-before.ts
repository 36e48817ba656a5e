import { dragAt } from '../arrow/drag/drag-at.ts';
import type { FlyingArrow } from '../arrow/flying-arrow.ts';
import { referenceArea } from '../arrow/reference-area.ts';
import type { Air } from '../atmosphere/air.ts';
import { type MetresPerSecond, si } from '../quantities/quantity.ts';

/**
 * The speed of an arrow some way before the place where its speed was measured, on a path so short that neither its drag
 * coefficient nor its direction changes.
 *
 *   v0 = v exp(k x),   k = density x CD x S / (2 m)
 *
 * @param speed as measured, m/s
 * @param way back to where the speed is wanted, m
 * @source the solution of m dv/dt = -(1/2) density x CD x S v^2 with dv/dt = v dv/dx
 */
export function speedBefore(
  arrow: FlyingArrow,
  air: Air,
  speed: MetresPerSecond,
  way: number,
): MetresPerSecond {
  const k = (air.density * dragAt(arrow, air, speed) * referenceArea(arrow.diameter)) / (2 * arrow.mass);
  return si(speed * Math.exp(k * way));
}
