import type { Fins } from '../arrow/flying-arrow.ts';

/**
 * The slope that vanes get back of what the wake of blades takes of them at small incidence, as the incidence grows and the
 * wake trails past them.
 *
 *   ΔC a²/(a² + a½²)
 *
 * @returns a function of the squared speed across the shaft and of the airspeed
 * @source the vortex pair of arrow/lift/blade-wake.ts, seen from aside
 */
export function wakeGivesBack(fins: Fins | undefined): (across2: number, airspeed: number) => number {
  const wake = fins === undefined ? null : fins.wake;
  if (wake === null) return () => 0;
  const { slope, halfAngle } = wake;
  const half2 = halfAngle * halfAngle;
  return (across2, airspeed) => (slope * across2) / (across2 + half2 * airspeed * airspeed);
}

/** Where that acts, from the balance point, m; 0 where there is nothing to get back. */
export const wakePlace = (fins: Fins | undefined): number =>
  fins === undefined || fins.wake === null || fins.vanes === null ? 0 : fins.vanes.place;
