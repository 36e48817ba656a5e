import { DomainError } from '../quantities/domain-error.ts';
import { type Metres, type MetresPerSecond, type Radians, si } from '../quantities/quantity.ts';
import { within } from './within.ts';

/** A steady wind: the velocity of the air, in the archer's terms. */
export interface Wind {
  /** Along the line of sight, positive towards the target. */
  readonly tail: MetresPerSecond;
  /** Across it, positive blowing to the archer's right. */
  readonly across: MetresPerSecond;
  /** Plumb, positive rising: thermals, wind that a hillside turns up. Alike at every height. */
  readonly up: MetresPerSecond;
  /** Exponent of the power law of height; 0 is a uniform wind. */
  readonly shear: number;
  /** Height above ground at which `tail` and `across` hold. */
  readonly referenceHeight: Metres;
}

/** Where a person holds a wind meter. */
const EYE_LEVEL: Metres = si(1.6);

export const calm: Wind = { tail: si(0), across: si(0), up: si(0), shear: 0, referenceHeight: EYE_LEVEL };

/**
 * The wind from its speed and the bearing it comes from.
 *
 *   tail = -W cos(from),   across = -W sin(from)
 *
 * @param speed m/s, 0 or more
 * @param from  bearing the wind comes from, relative to the line of sight: 0 from ahead (a headwind), +pi/2 from the
 *   archer's right (it blows left, so `across` is negative)
 * @param shear exponent of W(h) = W (h / referenceHeight)^shear; 0 (default) is uniform, 1/7 is usual over open grass
 * @param referenceHeight height of the measurement, default 1.6 m (a meter held at eye level)
 * @param up plumb, rising positive, m/s; default 0
 * @throws DomainError for a negative or non-finite speed, a rise that is not finite, a bearing that is not finite, a shear
 *   outside 0 to 1
 */
export function windFrom(
  speed: MetresPerSecond,
  from: Radians,
  shear = 0,
  referenceHeight: Metres = EYE_LEVEL,
  up: MetresPerSecond = si(0),
): Wind {
  within('wind speed (m/s)', speed, 0, 100);
  if (!Number.isFinite(from)) throw new DomainError('wind bearing (rad)', from, 'a finite angle');
  within('wind shear exponent', shear, 0, 1);
  within('wind reference height (m)', referenceHeight, 0.01, 1000);
  within('air that rises (m/s)', up, -100, 100);
  return {
    tail: si(-speed * Math.cos(from)),
    across: si(-speed * Math.sin(from)),
    up,
    shear,
    referenceHeight,
  };
}
