import { type Kilograms, type Metres, si } from '../quantities/quantity.ts';
import type { FlyingArrow } from './flying-arrow.ts';

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
      shaftMoments: [B0, ...moved(forward, B0, B1, B2)],
    },
  };
}

/** First and second moment about a point moved forward. */
const moved = (by: number, total: number, first: number, second: number): readonly [number, number] => [
  first - by * total,
  second - 2 * by * first + by * by * total,
];
