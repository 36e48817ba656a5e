import { si } from '../../quantities/quantity.ts';
import type { FlyingArrow } from '../flying-arrow.ts';

/** The same arrow with vanes that do not turn it. */
export const unspun = (arrow: FlyingArrow): FlyingArrow =>
  arrow.attitude === null ? arrow : { ...arrow, attitude: { ...arrow.attitude, spinPerMetre: si(0) } };
