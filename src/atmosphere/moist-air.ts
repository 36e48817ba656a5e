import {
  type Kelvin,
  type KilogramsPerCubicMetre,
  type Pascals,
  type Ratio,
  si,
} from '../quantities/quantity.ts';
import type { Air } from './air.ts';
import { viscosity } from './viscosity.ts';
import { within } from './within.ts';

/** What a pocket weather meter shows. */
export interface Weather {
  readonly temperature: Kelvin;
  /** Absolute (station) pressure. */
  readonly pressure: Pascals;
  /** Relative humidity, 0 to 1. */
  readonly humidity: Ratio;
}

/**
 * The air from temperature, station pressure and relative humidity.
 *
 * @param weather 233 K to 323 K, 50 kPa to 110 kPa, humidity 0 to 1
 * @throws DomainError outside those ranges
 */
export const moistAir = ({ temperature, pressure, humidity }: Weather): Air => ({
  temperature,
  pressure,
  humidity,
  density: moistAirDensity({ temperature, pressure, humidity }),
  viscosity: viscosity(temperature),
});

const R = 8.314472; // J/(mol K)
const MOLAR_MASS_AIR = 28.96546e-3; // kg/mol, with 400 ppm of carbon dioxide
const MOLAR_MASS_WATER = 18.01528e-3; // kg/mol
const ICE_POINT = 273.15; // K

/**
 * Density of moist air.
 *
 *   rho = p Ma / (Z R T) [1 - x (1 - Mv / Ma)],   x = h f psv / p
 *
 * p pressure, T temperature, x mole fraction of vapour, h relative humidity, f enhancement factor, psv saturation
 * pressure over water, Z compressibility, Ma and Mv molar masses, R gas constant.
 *
 * The paper validates the formula from 15 degC to 27 degC and 60 kPa to 110 kPa (relative standard uncertainty 22e-6).
 * Outside it stays within 1e-4 of ideal-gas mixing between -20 degC and 40 degC; below freezing the vapour pressure is that over
 * supercooled water, as meters report it. At -40 degC vapour holds under 2e-4 of the density, so its error cannot matter.
 * Carbon dioxide is taken as 400 ppm; 50 ppm more adds 2e-5.
 *
 * @throws DomainError outside 233 K to 323 K, 50 kPa to 110 kPa, humidity 0 to 1
 * @source Picard, Davis, Glaeser and Fujii, Revised formula for the density of moist air (CIPM-2007), Metrologia 45 (2008)
 *   149-155, doi 10.1088/0026-1394/45/2/004
 * @checked reference/cipm-2007; property: falls as humidity rises
 */
export function moistAirDensity({
  temperature: T,
  pressure: p,
  humidity: h,
}: Weather): KilogramsPerCubicMetre {
  within('air temperature (K)', T, 233, 323.15);
  within('air pressure (Pa)', p, 50_000, 110_000);
  within('relative humidity', h, 0, 1);
  const t = T - ICE_POINT;
  const x = (h * enhancement(t, p) * saturationPressure(T)) / p;
  const Z = compressibility(t, T, p, x);
  return si(((p * MOLAR_MASS_AIR) / (Z * R * T)) * (1 - x * (1 - MOLAR_MASS_WATER / MOLAR_MASS_AIR)));
}

/**
 * Saturation pressure of water vapour over liquid water: exp(A T^2 + B T + C + D / T), in Pa.
 *
 * @source CIPM-2007, equation A1.1
 */
export const saturationPressure = (T: number): Pascals =>
  si(Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T));

/** f = alpha + beta p + gamma t^2, t in degC. */
const enhancement = (t: number, p: number) => 1.00062 + 3.14e-8 * p + 5.6e-7 * t * t;

/** Z of equation A1.4, t in degC, T in K. */
function compressibility(t: number, T: number, p: number, x: number): number {
  const first =
    1.58123e-6 -
    2.9331e-8 * t +
    1.1043e-10 * t * t +
    (5.707e-6 - 2.051e-8 * t) * x +
    (1.9898e-4 - 2.376e-6 * t) * x * x;
  return 1 - (p / T) * first + (p / T) ** 2 * (1.83e-11 - 0.765e-8 * x * x);
}
