import type { Metres, MetresPerSecond, Radians } from '../quantities/quantity.ts';
import type { DaySetting } from './day-setting.ts';

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

/** When something was measured, and in what. */
interface Dated {
  readonly day: Day;
  /** What was different on that day; absent where the rig itself was shot. */
  readonly setting?: DaySetting;
}

/** A group shot with the sight somewhere, and where its centre was. */
interface Group extends Dated {
  readonly range: Metres;
  /** Of the group's centre above the aiming point, m. */
  readonly vertical: number;
  /**
   * Standard uncertainty on the target of everything that is this mark's alone: the group's centre, the reading, the range, m.
   */
  readonly sd: Metres;
  /** How the bow was held over, clockwise positive. */
  readonly cant: Radians;
}

/** A group shot with the sight at a reading. */
export interface ShotMark extends Group {
  readonly kind: 'mark';
  readonly reading: number;
}

/** A group shot with the sight at a line that was pencilled on a strip without numbers. */
export interface PencilMark extends Group {
  readonly kind: 'pencil';
  /** From the strip's line of the zero range, positive to longer ranges, m. */
  readonly onTape: number;
  /**
   * Reading of the scale at which that line was drawn, of a scale whose place is known before the marks; null where the line
   * stands at the zero range by the fit itself.
   */
  readonly lineAt: number | null;
}

/** A chronograph reading down range, the sight set for the zero range. */
interface SpeedReading extends Dated {
  readonly kind: 'speed';
  /** From the eye; at the start of free flight and nearer it is the launch speed. */
  readonly range: Metres;
  /** Of one that stood at the bow, so that its place was not written as a range. */
  readonly isAtBow?: true;
  readonly speed: MetresPerSecond;
  readonly sd: MetresPerSecond;
}

/** How far below the aiming point arrows hit at one range with the sight set for another. */
interface Drop extends Dated {
  readonly kind: 'drop';
  readonly aimedWith: Metres;
  readonly range: Metres;
  readonly drop: Metres;
  readonly sd: Metres;
}

export type Measurement = ShotMark | PencilMark | SpeedReading | Drop;
