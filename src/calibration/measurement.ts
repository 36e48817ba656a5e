import type { Metres, MetresPerSecond, Radians } from '../quantities/quantity.ts';

/** A group shot with the sight at a reading, and where its centre was. */
export interface ShotMark {
  readonly kind: 'mark';
  readonly range: Metres;
  readonly reading: number;
  /** Of the group's centre above the aiming point, m. */
  readonly vertical: number;
  /** Standard uncertainty of the group's centre on the target, m. */
  readonly sd: Metres;
  /** How the bow was held over, clockwise positive. */
  readonly cant: Radians;
}

/** A chronograph reading down range, the sight set for the zero range. */
interface SpeedReading {
  readonly kind: 'speed';
  readonly range: Metres;
  readonly speed: MetresPerSecond;
  readonly sd: MetresPerSecond;
}

/** How far below the aiming point arrows hit at one range with the sight set for another. */
interface Drop {
  readonly kind: 'drop';
  readonly aimedWith: Metres;
  readonly range: Metres;
  readonly drop: Metres;
  readonly sd: Metres;
}

export type Measurement = ShotMark | SpeedReading | Drop;
