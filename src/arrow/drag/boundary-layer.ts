import { laminarCylinder, mixedFriction, turbulentCylinder } from './friction.ts';

/**
 * The state of the layer of air along the shaft.
 * - `transition`: laminar to a Reynolds number of 5e5 along the shaft, turbulent behind. This is what arrows called turbulent
 *   do by their measured drag, hunting arrows with them.
 * - `turbulent`: from the tip on, the upper bound: 10 to 15 % more drag.
 * - `laminar`: as far as the vanes, which are far taller than a trip wire and end it. Slim target arrows with a smooth
 *   point may fly so.
 */
export type BoundaryLayer = 'laminar' | 'transition' | 'turbulent';

/**
 * Where a smooth plate's layer turns turbulent. A judgement within the source's range: with it hunting arrows have the drag that
 * arrows called turbulent were measured with. At 3e6 a hunting shaft would be nearly laminar, with 45 % less drag.
 *
 * @source Schlichting, Boundary-Layer Theory, chapter XVI: 3e5 to 3e6
 */
const CRITICAL_REYNOLDS = 5e5;

/** A body of revolution as the layer sees it. */
export interface LongBody {
  readonly length: number;
  readonly diameter: number;
  /** From the tip to whatever ends a laminar layer, at most `length`. */
  readonly trip: number;
}

/**
 * Mean friction coefficient of the body's surface from the tip to `upTo`.
 *
 * @param reynolds on the diameter, above 0
 * @returns friction force / (dynamic pressure x wetted area)
 */
export function bodyFriction(
  { length, diameter, trip }: LongBody,
  layer: BoundaryLayer,
  reynolds: number,
  upTo = length,
): number {
  const laminarRun = {
    laminar: trip,
    transition: Math.min(trip, (CRITICAL_REYNOLDS * diameter) / reynolds),
    turbulent: 0,
  }[layer];
  const slender = upTo / diameter;
  const along = reynolds * slender;
  return mixedFriction(
    laminarRun / upTo,
    (share) => laminarCylinder(share * along, share * slender),
    (share) => turbulentCylinder(share * along, share * slender),
  );
}

/** Shape of the velocity in a layer: integrals over its thickness of f (1 - f), h f (1 - f), and f squared up to a height. */
interface Profile {
  readonly momentum: number;
  readonly momentumMoment: number;
  /** Mean of f^2 from the wall to k thicknesses, k at most 1. */
  readonly meanSquare: (k: number) => number;
}

/** f = h^(1/7). @source Schlichting, Boundary-Layer Theory, chapter XXI */
const SEVENTH_POWER: Profile = {
  momentum: 7 / 72,
  momentumMoment: 7 / 240,
  meanSquare: (k) => (7 / 9) * k ** (2 / 7),
};

/** f = 2 h - h^2. @source Schlichting, Boundary-Layer Theory, chapter X */
const PARABOLA: Profile = {
  momentum: 2 / 15,
  momentumMoment: 1 / 20,
  meanSquare: (k) => k * k * (4 / 3 - k + (k * k) / 5),
};

/**
 * How much of the full dynamic pressure a vane of this height feels, standing in the shaft's layer.
 *
 * The momentum the layer lacks is the friction of the shaft ahead, Cf a x / 2 = a I1 D + I2 D^2 (a radius, x place, I1 and I2 the
 * profile's integrals), which gives its thickness D; the factor is the mean of (u / U)^2 over the vane's height.
 *
 * @param place of the vane from the tip
 * @returns above 0, at most 1
 * @source momentum balance of an axially symmetric layer (von Karman), profiles as cited
 */
export function immersion(
  body: LongBody,
  layer: BoundaryLayer,
  reynolds: number,
  place: number,
  height: number,
): number {
  const laminar =
    layer === 'laminar' || (layer === 'transition' && (CRITICAL_REYNOLDS * body.diameter) / reynolds > place);
  const { momentum, momentumMoment, meanSquare } = laminar ? PARABOLA : SEVENTH_POWER;
  const radius = body.diameter / 2;
  const deficit = (bodyFriction({ ...body, trip: place }, layer, reynolds, place) * radius * place) / 2;
  const b = radius * momentum;
  const thickness = (2 * deficit) / (b + Math.sqrt(b * b + 4 * momentumMoment * deficit));
  return height < thickness ? meanSquare(height / thickness) : 1 - ((1 - meanSquare(1)) * thickness) / height;
}
