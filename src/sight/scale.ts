/** The numbers engraved on a sight, and what one of them moves the pin. */
export interface SightScale {
  /** Travel of the pin for one unit of the scale, m. */
  readonly travelPerUnit: number;
  /** +1 when readings grow as the pin goes down. */
  readonly direction: 1 | -1;
  /** The reading at the zero range. */
  readonly atZero: number;
}

/** The reading where the pin has travelled `travel` (m, positive down) from its place at the zero range. */
export const readingAt = ({ travelPerUnit, direction, atZero }: SightScale, travel: number): number =>
  atZero + (direction * travel) / travelPerUnit;

/** The travel (m, positive down) that a reading means. */
export const travelAt = ({ travelPerUnit, direction, atZero }: SightScale, reading: number): number =>
  direction * (reading - atZero) * travelPerUnit;
