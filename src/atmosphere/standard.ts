import { STANDARD_GRAVITY } from '../quantities/exact.ts';
import {
  type Kelvin,
  type KilogramsPerCubicMetre,
  type Metres,
  type Pascals,
  si,
} from '../quantities/quantity.ts';
import type { Air } from './air.ts';
import { viscosity } from './viscosity.ts';
import { within } from './within.ts';

const SEA_LEVEL_TEMPERATURE = 288.15; // K
const SEA_LEVEL_PRESSURE = 101_325; // Pa
const LAPSE = 0.0065; // K per geopotential metre
const R = 8314.32; // N m/(kmol K), the standard's own value
const MOLAR_MASS = 28.9644; // kg/kmol
const EARTH_RADIUS = 6_356_766; // m, the standard's effective radius
/** g0 M / (R L) = 5.255876 */
const PRESSURE_EXPONENT = (STANDARD_GRAVITY * MOLAR_MASS) / (R * LAPSE);

/** Altitudes where people shoot, with room: the Dead Sea shore to the top of the first layer, geopotential metres. */
const LOWEST = -500;
const HIGHEST = 11_000;

/**
 * Air of the standard atmosphere (dry) at a geometric altitude.
 *
 * @param altitude geometric height above sea level, -500 m to 11 019 m
 * @throws DomainError outside that range
 * @source U.S. Standard Atmosphere, 1976, NOAA-S/T 76-1562
 * @checked reference/us-standard-atmosphere-1976
 */
export function standardAir(altitude: Metres): Air {
  const temperature = standardTemperature(altitude);
  const pressure = standardPressure(altitude);
  return {
    temperature,
    pressure,
    humidity: si(0),
    density: si((pressure * MOLAR_MASS) / (R * temperature)),
    viscosity: viscosity(temperature),
  };
}

/** H = r Z / (r + Z): geopotential height of a geometric one. */
function geopotential(altitude: number): number {
  const height = (EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude);
  within('altitude (geopotential m)', height, LOWEST, HIGHEST);
  return height;
}

/** T = T0 - L H. @source U.S. Standard Atmosphere, 1976, equation 23 */
export const standardTemperature = (altitude: Metres): Kelvin =>
  si(SEA_LEVEL_TEMPERATURE - LAPSE * geopotential(altitude));

/** P = P0 (1 - L H / T0)^(g0 M / R L). @source U.S. Standard Atmosphere, 1976, equation 33a */
export const standardPressure = (altitude: Metres): Pascals =>
  si(
    SEA_LEVEL_PRESSURE * (1 - (LAPSE * geopotential(altitude)) / SEA_LEVEL_TEMPERATURE) ** PRESSURE_EXPONENT,
  );

/**
 * Station pressure from a pressure reduced to sea level, as an altimeter setting is defined: the standard atmosphere's
 * height at the station's pressure exceeds that at the reduced pressure by the station's altitude.
 *
 *   (p / P0)^k = (A / P0)^k - L H / T0,   k = 1 / 5.255876
 *
 * Weather services also publish pressures reduced with the day's real temperature; reading one of those here costs
 * about 1 % of pressure at 2000 m on a day 15 K away from the standard, and less in proportion to height.
 *
 * @param seaLevelReduced altimeter setting, 85 kPa to 110 kPa
 * @param altitude geometric height of the station, -500 m to 11 019 m
 * @throws DomainError outside those ranges
 * @source U.S. Standard Atmosphere, 1976, equation 33a, solved for the pressure at both heights
 */
export function stationPressure(seaLevelReduced: Pascals, altitude: Metres): Pascals {
  within('sea-level pressure (Pa)', seaLevelReduced, 85_000, 110_000);
  const k = 1 / PRESSURE_EXPONENT;
  const base =
    (seaLevelReduced / SEA_LEVEL_PRESSURE) ** k - (LAPSE * geopotential(altitude)) / SEA_LEVEL_TEMPERATURE;
  return si(SEA_LEVEL_PRESSURE * base ** PRESSURE_EXPONENT);
}

/**
 * Geometric altitude at which the standard atmosphere has this pressure; below sea level the first layer is continued.
 *
 *   H = (T0 / L) [1 - (P / P0)^(1 / 5.255876)],   Z = r H / (r - H)
 *
 * Weather moves it by some 100 m either way, deep lows by 400 m.
 *
 * @param pressure 20 kPa to 115 kPa
 * @throws DomainError outside that range
 * @source U.S. Standard Atmosphere, 1976, equations 19 and 33a
 */
export function pressureAltitude(pressure: Pascals): Metres {
  within('air pressure (Pa)', pressure, 20_000, 115_000);
  const height =
    (SEA_LEVEL_TEMPERATURE / LAPSE) * (1 - (pressure / SEA_LEVEL_PRESSURE) ** (1 / PRESSURE_EXPONENT));
  return si((EARTH_RADIUS * height) / (EARTH_RADIUS - height));
}

/**
 * Geometric altitude at which the standard atmosphere has this density; below sea level the first layer is continued.
 *
 *   H = (T0 / L) [1 - (rho / rho0)^(1 / 4.255876)],   Z = r H / (r - H)
 *
 * @param density 0.3 to 2 kg/m3
 * @throws DomainError outside that range
 * @source U.S. Standard Atmosphere, 1976, equations 19, 23, 33a and 42
 */
export function densityAltitude(density: KilogramsPerCubicMetre): Metres {
  within('air density (kg/m3)', density, 0.3, 2);
  const seaLevelDensity = (SEA_LEVEL_PRESSURE * MOLAR_MASS) / (R * SEA_LEVEL_TEMPERATURE);
  const height =
    (SEA_LEVEL_TEMPERATURE / LAPSE) * (1 - (density / seaLevelDensity) ** (1 / (PRESSURE_EXPONENT - 1)));
  return si((EARTH_RADIUS * height) / (EARTH_RADIUS - height));
}
