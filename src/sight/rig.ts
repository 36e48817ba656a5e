import type { FlightConditions } from '../flight/conditions.ts';
import type { Metres, MetresPerSecond, Radians } from '../quantities/quantity.ts';
import type { BowGeometry } from './geometry.ts';
import type { SightScale } from './scale.ts';

/** One bow, arrow, sight and air: the values every mark and every question is computed from. */
export interface Rig {
  readonly conditions: FlightConditions;
  /** At the start of free flight. */
  readonly launchSpeed: MetresPerSecond;
  readonly geometry: BowGeometry;
  /** How the bow is held, clockwise positive. */
  readonly cant: Radians;
  /** Where the sight is set to hit in both directions, and where travel is counted from. */
  readonly zeroRange: Metres;
  /** Of the line of sight the sight was zeroed on, uphill positive. The shots' own is in the conditions. */
  readonly zeroSlope: Radians;
  /**
   * The arrow and the air that the sight was zeroed with, where they are not these; null where they are. Its windage then
   * stays as it was set, and so does its scale, while travel counts from the mark of this arrow in this air.
   */
  readonly zeroedWith: ZeroedWith | null;
  /** Null when the sight has no scale, or one of unknown pitch that nothing has measured. */
  readonly scale: SightScale | null;
  /** From the pin's centre to the lowest part of the sight that moves with it. */
  readonly housingBelowPin: Metres;
}

/** What a sight was zeroed with: all of a rig that belongs to the arrow and to the place. */
interface ZeroedWith extends Pick<FlightConditions, 'arrow' | 'air' | 'freeFall'> {
  readonly launchSpeed: MetresPerSecond;
  /** As of the geometry: it ends at the arrow's balance point. */
  readonly freeFlight: Metres;
}
