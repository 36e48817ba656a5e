import { type Kilograms, type Metres, si } from '../quantities/quantity.ts';
import type { FinLift, Fins, FlyingArrow } from './flying-arrow.ts';

/** The same arrow of another mass: every piece heavier alike, so inertias go with it. */
export function withMass(arrow: FlyingArrow, mass: Kilograms): FlyingArrow {
  const { attitude } = arrow;
  if (attitude === null) return { ...arrow, mass };
  const scale = mass / arrow.mass;
  return {
    ...arrow,
    mass,
    attitude: {
      ...attitude,
      axialInertia: si(attitude.axialInertia * scale),
      transverseInertia: si(attitude.transverseInertia * scale),
      spinUp: si(attitude.spinUp * scale),
    },
  };
}

/**
 * The same arrow balancing elsewhere: its pieces moved together, so the inertia about the balance point stays, while every
 * surface stands nearer or farther: with x measured from the balance point, moved by b, Σ C (x − b)^k.
 */
export function withBalance(arrow: FlyingArrow, balance: Metres): FlyingArrow {
  const { attitude } = arrow;
  if (attitude === null) return { ...arrow, balance };
  const forward = balance - arrow.balance;
  const [first, second] = moved(forward, attitude.normalSlope, attitude.firstMoment, attitude.secondMoment);
  const [B0, B1, B2] = attitude.shaftMoments;
  return {
    ...arrow,
    balance,
    attitude: {
      ...attitude,
      firstMoment: si(first),
      secondMoment: si(second),
      fins: attitude.fins && finsMoved(attitude.fins, forward),
      shaftMoments: [B0, ...moved(forward, B0, B1, B2)],
    },
  };
}

const finsMoved = (fins: Fins, forward: number): Fins => {
  const moved = (ring: FinLift | null): FinLift | null =>
    ring === null ? null : { ...ring, place: si(ring.place - forward) };
  return { ...fins, vanes: moved(fins.vanes), blades: moved(fins.blades) };
};

/** Factors on what the fins lift and on what the wake of the blades takes. */
export interface LiftFactors {
  readonly vanes: number;
  readonly blades: number;
  readonly wake: number;
}
export const AS_COUNTED: LiftFactors = { vanes: 1, blades: 1, wake: 1 };

/**
 * The same arrow with fins that lift otherwise than counted. What the wake takes is a share of the vanes' lift, so it goes with
 * it. The spin stays: a factor on the lift of fins cancels from it.
 */
export function withLift(arrow: FlyingArrow, factors: LiftFactors): FlyingArrow {
  const { attitude } = arrow;
  if (attitude?.fins === undefined) return arrow;
  const { vanes, blades, wake } = attitude.fins;
  const taken = wake === null ? 0 : wake.slope;
  const takenNow = taken * factors.vanes * factors.wake;
  const vaneSlope = vanes === null ? 0 : (vanes.slope + taken) * factors.vanes - takenNow;
  const bladeSlope = blades === null ? 0 : blades.slope * factors.blades;
  const changes = [
    ...(vanes === null ? [] : [{ change: vaneSlope - vanes.slope, place: vanes.place }]),
    ...(blades === null ? [] : [{ change: bladeSlope - blades.slope, place: blades.place }]),
  ];
  const sum = (power: number): number =>
    changes.reduce((total, { change, place }) => total + change * place ** power, 0);
  return {
    ...arrow,
    attitude: {
      ...attitude,
      normalSlope: attitude.normalSlope + sum(0),
      firstMoment: si(attitude.firstMoment + sum(1)),
      secondMoment: si(attitude.secondMoment + sum(2)),
      fins: {
        ...attitude.fins,
        vanes: vanes && { ...vanes, slope: vaneSlope },
        blades: blades && { ...blades, slope: bladeSlope },
        wake: wake && { ...wake, slope: takenNow },
      },
    },
  };
}

/** First and second moment about a point moved forward. */
const moved = (by: number, total: number, first: number, second: number): readonly [number, number] => [
  first - by * total,
  second - 2 * by * first + by * by * total,
];
