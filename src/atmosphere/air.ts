import type {
  Kelvin,
  KilogramsPerCubicMetre,
  PascalSeconds,
  Pascals,
  Ratio,
} from '../quantities/quantity.ts';

/** The air an arrow flies through, at the place where it is shot. */
export interface Air {
  readonly temperature: Kelvin;
  /** Absolute (station) pressure, not reduced to sea level. */
  readonly pressure: Pascals;
  /** Relative humidity, 0 to 1. */
  readonly humidity: Ratio;
  readonly density: KilogramsPerCubicMetre;
  /** Dynamic viscosity. */
  readonly viscosity: PascalSeconds;
}
