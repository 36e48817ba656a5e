import { GRAIN, INCH } from '../../quantities/exact.ts';
import { type Kilograms, type Metres, si } from '../../quantities/quantity.ts';

/** Tape that makes a bare shaft weigh and balance like the fletched arrow. */
export interface Tape {
  readonly mass: Kilograms;
  readonly massSd: Kilograms;
  /** Its middle from the groove of the nock. */
  readonly fromNock: Metres;
  readonly fromNockSd: Metres;
}

/** Of a grain scale and of a balance point found on an edge; assumed. */
const MASS_SD = 0.1 * GRAIN;
const BALANCE_SD = 0.02 * INCH;

/** An arrow's mass and its balance point from the groove. */
export interface Balanced {
  readonly mass: Kilograms;
  readonly balance: Metres;
}

/**
 * The tape that makes up for the vanes.
 *
 *   mass M − B,   place (M b_M − B b_B)/(M − B)
 *
 * @param bare lighter than `fletched`
 */
export function tapeFor(fletched: Balanced, bare: Balanced): Tape {
  const mass = fletched.mass - bare.mass;
  const place = (fletched.mass * fletched.balance - bare.mass * bare.balance) / mass;
  const byMass = [(fletched.balance - place) / mass, (place - bare.balance) / mass];
  return {
    mass: si(mass),
    massSd: si(MASS_SD * Math.SQRT2),
    fromNock: si(place),
    fromNockSd: si(
      Math.hypot(
        (fletched.mass / mass) * BALANCE_SD,
        (bare.mass / mass) * BALANCE_SD,
        ...byMass.map((slope) => slope * MASS_SD),
      ),
    ),
  };
}
