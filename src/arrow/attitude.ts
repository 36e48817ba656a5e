import { si } from '../quantities/quantity.ts';
import type { Attitude } from './flying-arrow.ts';
import type { LiftingSurfaces } from './lifting.ts';
import type { MassProperties } from './mass-properties.ts';
import { type Lift, liftMoments } from './normal-force.ts';
import type { ArrowParts } from './parts.ts';
import { arrowLength, nockLength } from './pieces.ts';
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

/** A bare shaft never takes up a spin of its own. */
function spinOf(
  axialInertia: number,
  { vanes }: LiftingSurfaces,
  withBody: boolean,
): Pick<Attitude, 'spinPerMetre' | 'spinUp'> {
  if (vanes === null) return { spinPerMetre: si(0), spinUp: si(Number.POSITIVE_INFINITY) };
  const { fin, count, slope, angle } = vanes;
  const roll = withBody ? vanes.roll : NO_INTERFERENCE;
  return {
    spinPerMetre: si(spinPerMetre(fin, angle, roll)),
    spinUp: si(spinUp(fin, count, slope, axialInertia, roll)),
  };
}

/** Integrals of 1, x and x^2 from `rear` to `front`. */
const powersAlong = (rear: number, front: number): readonly [number, number, number] => [
  front - rear,
  (front ** 2 - rear ** 2) / 2,
  (front ** 3 - rear ** 3) / 3,
];
