/**
 * Drag of a long cylinder square to the flow, on its side area: what the shaft's cross-flow costs beyond the linear laws.
 *
 * @source Hoerner, Fluid-Dynamic Drag, chapter 3; Galejs's term for finned bodies, as given by Niskanen, 2013
 */
export const CROSS_FLOW = 1.1;

/** Three points integrate a polynomial of the fifth degree exactly. @source Gauss and Legendre, as in any handbook */
const GAUSS = Math.sqrt(0.6);

/** One place along the shaft, and what a cross-flow of 1 there adds to the normal-force slope. */
export interface ShaftPoint {
  /** From the balance point, forward positive, m. */
  readonly place: number;
  readonly weight: number;
}

/**
 * The shaft's three Gauss points, rear to front: (4K/πd) ∫ x^k |w + x e′| dx is the sum of weight · place^k · |w + place e′|.
 *
 * @param shaftMoments integrals of 1, x and x² along the shaft, of which the first two tell where it lies
 * @param diameter m
 * @param crossFlow K, `CROSS_FLOW` unless linear laws are wanted
 */
export function shaftPoints(
  [length, first]: readonly [number, number, number],
  diameter: number,
  crossFlow: number,
): readonly [ShaftPoint, ShaftPoint, ShaftPoint] {
  const middle = first / length;
  const reach = (GAUSS * length) / 2;
  const weight = ((4 * crossFlow) / (Math.PI * diameter)) * (length / 18);
  return [
    { place: middle - reach, weight: 5 * weight },
    { place: middle, weight: 8 * weight },
    { place: middle + reach, weight: 5 * weight },
  ];
}
