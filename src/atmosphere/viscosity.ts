import { type Kelvin, type PascalSeconds, si } from '../quantities/quantity.ts';
import { within } from './within.ts';

/** beta in kg/(s m K^1/2) and Sutherland's constant in K, as the 1976 standard prints them. */
const BETA = 1.458e-6;
const SUTHERLAND = 110.4;

/**
 * Dynamic viscosity of dry air.
 *
 *   mu = beta T^(3/2) / (T + S)
 *
 * Humidity is neglected: saturated air at 35 degC is 1 % less viscous, which moves a turbulent arrow's drag by 0.1 %.
 *
 * @param temperature 150 K to 400 K
 * @throws DomainError outside that range
 * @source U.S. Standard Atmosphere, 1976, NOAA-S/T 76-1562, equation 51
 * @checked reference/sutherland-viscosity
 */
export function viscosity(temperature: Kelvin): PascalSeconds {
  within('air temperature (K)', temperature, 150, 400);
  return si((BETA * temperature ** 1.5) / (temperature + SUTHERLAND));
}
