import type { Metres, MetresPerSecond, Radians } from '../quantities/quantity.ts';

/** The day something was measured on, as the file names it; null where it does not. */
export type Day = string | null;

/** What a day may do to everything that is shot on it, as standard deviations. */
export interface DayPriors {
  /** Of the launch speed, m/s. */
  readonly speed: number;
  /** Of the air's density over what the file says of it, relative. */
  readonly density: number;
  /** Of the wind along the line of sight, m/s. */
  readonly headWind: number;
}

/** A group shot with the sight at a reading, and where its centre was. */
export interface ShotMark {
  readonly kind: 'mark';
  readonly range: Metres;
  readonly reading: number;
  /** Of the group's centre above the aiming point, m. */
  readonly vertical: number;
  /**
   * Standard uncertainty on the target of everything that is this mark's alone: the group's centre, the reading, the range, m.
   */
  readonly sd: Metres;
  /** How the bow was held over, clockwise positive. */
  readonly cant: Radians;
  readonly day: Day;
}

/** A chronograph reading down range, the sight set for the zero range. */
interface SpeedReading {
  readonly kind: 'speed';
  readonly range: Metres;
  readonly speed: MetresPerSecond;
  readonly sd: MetresPerSecond;
  readonly day: Day;
}

/** How far below the aiming point arrows hit at one range with the sight set for another. */
interface Drop {
  readonly kind: 'drop';
  readonly aimedWith: Metres;
  readonly range: Metres;
  readonly drop: Metres;
  readonly sd: Metres;
  readonly day: Day;
}

export type Measurement = ShotMark | SpeedReading | Drop;
