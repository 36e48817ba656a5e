import type { Air } from './air.ts';

/**
 * The Reynolds number of a body in moving air, density x speed x length over viscosity.
 *
 * @param speed of the air past the body, m/s
 * @param length m; of an arrow the outside diameter of its shaft
 */
export const reynoldsNumber = ({ density, viscosity }: Air, speed: number, length: number): number =>
  (density * speed * length) / viscosity;
