import type { FlyingArrow } from '../arrow/flying-arrow.ts';
import type { Air } from '../atmosphere/air.ts';
import type { Wind } from '../atmosphere/wind.ts';
import type { Metres, Radians } from '../quantities/quantity.ts';
import type { EarthPlace } from './frame.ts';

/** Everything a flight depends on, besides how it starts. */
export interface FlightConditions {
  readonly arrow: FlyingArrow;
  readonly air: Air;
  readonly wind: Wind;
  /** Of the line of sight, uphill positive. */
  readonly slope: Radians;
  /** The acceleration of free fall where it is shot, m/s²: the standard one unless the place is known. */
  readonly freeFall: number;
  /** Height of the line of sight above the ground, for the wind's profile and the carry. */
  readonly eyeHeight: Metres;
  /** Null leaves the Earth's rotation out. */
  readonly place: EarthPlace | null;
}
