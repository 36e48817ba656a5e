import type { Estimate } from '../quantities/estimate.ts';
import { FOOT } from '../quantities/exact.ts';
import { type Kelvin, type MetresPerSecond, type Quantity, si } from '../quantities/quantity.ts';

/** How much faster a bow shoots for each degree of warmth. */
export type SpeedPerDegree = Quantity<'m/s/K'>;

/** A difference of 1 degF, K. */
const DEGREE_FAHRENHEIT = 5 / 9;

/**
 * Of a bow that was not measured at two temperatures: 0.0 ± 0.15 fps/degF.
 *
 * @source an assumption without a source: cold stiffens limbs and shortens strings, and the two work against each other
 */
export const USUAL_SPEED_PER_DEGREE: Estimate<SpeedPerDegree> = {
  value: si(0),
  sd: si((0.15 * FOOT) / DEGREE_FAHRENHEIT),
};

/**
 * Launch speed at another temperature than it was measured at.
 *
 *   v = v₀ + c (T − T₀)
 *
 * @param speed v₀ at T₀, m/s
 * @param perDegree c, m/s per K
 * @param warmer T − T₀, K
 */
export const speedAtTemperature = (
  speed: MetresPerSecond,
  perDegree: number,
  warmer: number | Kelvin,
): MetresPerSecond => si(speed + perDegree * warmer);
