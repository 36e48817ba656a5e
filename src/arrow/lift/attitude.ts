import { si } from '../../quantities/quantity.ts';
import type { Attitude } from '../flying-arrow.ts';
import type { MassProperties } from '../parts/mass-properties.ts';
import type { ArrowParts } from '../parts/parts.ts';
import { arrowLength, nockLength } from '../parts/pieces.ts';
import type { FinRing, LiftingSurfaces } from './lifting.ts';
import { type Lift, liftMoments } from './normal-force.ts';
import { NO_INTERFERENCE, spinPerMetre, spinUp } from './spin.ts';

/** Each lifting part with its place from the balance point. */
export function liftsFrom(balance: number, { nose, vanes, blades }: LiftingSurfaces): readonly Lift[] {
  const from = (slope: number, place: number) => ({ slope, place: place - balance });
  const rings = [vanes, blades].flatMap((ring) => (ring === null ? [] : [from(ring.ringSlope, ring.place)]));
  return [from(nose.slope, nose.place), ...rings];
}

/** What turns the arrow, from its parts and mass properties. */
export function attitudeOf(
  parts: ArrowParts,
  mass: MassProperties,
  surfaces: LiftingSurfaces,
  spinWithBody: boolean,
): Attitude {
  const [normalSlope, firstMoment, secondMoment] = liftMoments(liftsFrom(mass.balance, surfaces));
  return {
    axialInertia: mass.axialInertia,
    transverseInertia: mass.transverseInertia,
    ...spinOf(mass.axialInertia, surfaces, spinWithBody),
    normalSlope,
    firstMoment: si(firstMoment),
    secondMoment: si(secondMoment),
    shaftMoments: powersAlong(nockLength(parts.nock) - mass.balance, arrowLength(parts) - mass.balance),
  };
}

/**
 * Settled spin and how soon it settles. Straight blades in front damp the spin that the vanes force: rates add,  1/L = 1/Lv
 * + 1/Lb, and the settled spin falls by Lb/(Lv + Lb), by 30 % for a common three-blade head. A bare shaft never takes up a
 * spin of its own.
 *
 * @param angle of the vanes; their own unless another is asked about
 * @param withBody with the shaft's interference
 */
export function spinOf(
  axialInertia: number,
  { vanes, blades }: LiftingSurfaces,
  withBody: boolean,
  angle?: number,
): Pick<Attitude, 'spinPerMetre' | 'spinUp'> {
  const rollOf = (ring: FinRing) => (withBody ? ring.roll : NO_INTERFERENCE);
  const rate = (ring: FinRing | null) =>
    ring === null ? 0 : 1 / spinUp(ring.fin, ring.count, ring.slope, axialInertia, rollOf(ring));
  const [forced, damped] = [rate(vanes), rate(vanes) + rate(blades)];
  return {
    spinPerMetre: si(
      vanes === null ? 0 : (spinPerMetre(vanes.fin, angle ?? vanes.angle, rollOf(vanes)) * forced) / damped,
    ),
    spinUp: si(1 / damped),
  };
}

/** Integrals of 1, x and x^2 from `rear` to `front`. */
const powersAlong = (rear: number, front: number): readonly [number, number, number] => [
  front - rear,
  (front ** 2 - rear ** 2) / 2,
  (front ** 3 - rear ** 3) / 3,
];
