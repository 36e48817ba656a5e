import type { FlyingArrow } from '../flying-arrow.ts';

/**
 * Whether an arrow turns back into its flight from an incidence at which the wake of its blades has passed its vanes by. With
 * the wake on the vanes it may do so less, or not at all: such an arrow wanders about its flight by a degree, and does not
 * tumble.
 */
export function staysUpright({ attitude }: FlyingArrow): boolean {
  if (attitude === null) return false;
  const { fins, firstMoment } = attitude;
  const back =
    fins === undefined || fins.wake === null || fins.vanes === null ? 0 : fins.wake.slope * fins.vanes.place;
  return firstMoment + back < 0;
}
