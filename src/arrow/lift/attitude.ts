import { si } from '../../quantities/quantity.ts';
import type { Attitude, FinLift, Fins } from '../flying-arrow.ts';
import type { MassProperties } from '../parts/mass-properties.ts';
import type { ArrowParts } from '../parts/parts.ts';
import { arrowLength, nockLength } from '../parts/pieces.ts';
import { WAKE_UNCERTAINTY } from './blade-wake.ts';
import type { FinRing } from './fin-ring.ts';
import type { LiftingSurfaces } from './lifting.ts';
import { type Lift, liftMoments } from './normal-force.ts';
import { NO_INTERFERENCE, spinPerMetre, spinUp } from './spin.ts';

/** Each lifting part with its place from the balance point. */
export function liftsFrom(balance: number, surfaces: LiftingSurfaces): readonly Lift[] {
  const { nose } = surfaces;
  const { vanes, blades } = finsFrom(balance, surfaces);
  return [
    { slope: nose.slope, place: nose.place - balance },
    ...[vanes, blades].filter((fins) => fins !== null),
  ];
}

/**
 * Laws of the lift of fins are good to this, relative. @source the spread of measured slopes of low fins on bodies; a judgement
 */
const LIFT_UNCERTAINTY = 0.1;

/** The fins with their places from the balance point; what the blades' wake takes is off the vanes. */
function finsFrom(balance: number, { vanes, blades, wake }: LiftingSurfaces): Fins {
  const from = ({ ringSlope, place, count }: FinRing, share: number): FinLift => ({
    slope: ringSlope * share,
    place: si(place - balance),
    count,
  });
  return {
    vanes: vanes === null ? null : from(vanes, wake === null ? 1 : 1 - wake.share),
    blades: blades === null ? null : from(blades, 1),
    wake:
      vanes === null || wake === null
        ? null
        : { slope: vanes.ringSlope * wake.share, halfAngle: si(wake.halfAngle) },
    uncertainty: {
      // The layer's share is as uncertain as half of what it takes.
      vanes: vanes === null ? 0 : Math.hypot(LIFT_UNCERTAINTY, (1 - vanes.immersion) / (2 * vanes.immersion)),
      blades: LIFT_UNCERTAINTY,
      wake: WAKE_UNCERTAINTY,
    },
  };
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
    fins: finsFrom(mass.balance, surfaces),
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
