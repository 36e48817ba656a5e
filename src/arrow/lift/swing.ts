import { type Metres, si } from '../../quantities/quantity.ts';
import type { FlyingArrow } from '../flying-arrow.ts';

/** A damped swing, per unit of whatever runs (time or distance). */
export interface Oscillation {
  /** Undamped angular frequency; 0 or more. */
  readonly natural: number;
  /** Damping over critical damping. */
  readonly dampingRatio: number;
  /** Angular frequency as seen, with the damping; 0 when it does not swing through. */
  readonly damped: number;
  /** Rate at which the amplitude dies away. */
  readonly decay: number;
}

/**
 * The swing of I a'' + C a' + K a = 0.
 *
 *   natural = sqrt(K / I),   dampingRatio = C / (2 sqrt(K I)),   decay = C / (2 I)
 *
 * @param restoring K, above 0 (a stable body)
 * @source Mandell, Caporaso and Bengen, Topics in Advanced Model Rocketry, 1973, chapter 2, section 4
 * @checked reference/wind-tunnel-swing
 */
export function oscillation(restoring: number, damping: number, inertia: number): Oscillation {
  const natural = Math.sqrt(restoring / inertia);
  const decay = damping / (2 * inertia);
  return {
    natural,
    dampingRatio: decay / natural,
    damped: Math.sqrt(Math.max(0, natural ** 2 - decay ** 2)),
    decay,
  };
}

/** How an arrow's swing looks along its path. */
export interface Swing {
  /** Distance of one full swing. */
  readonly wavelength: Metres;
  /** Distance in which its amplitude falls to 1/e. */
  readonly dampingLength: Metres;
}

/**
 * The small swing of an arrow in flight, per metre of path: attitude and path are coupled (the lift also turns the path), and
 * the loss of speed feeds the swing a little.
 *
 *   a' = (1 + P M1/m) w - (P CL/m) a,   w' = (P M1/I) a + (P CD/m - P M2/I) w,   P = rho S / 2
 *
 * a incidence, w attitude turned per metre, CL = CNa - CD, M1 and M2 first and second moment of the normal-force slopes.
 *
 * @param density of the air, kg/m3
 * @param dragCoefficient at the speed asked about
 * @returns null for an arrow whose attitude is unknown, that is unstable, or that does not swing through
 * @source linearised plane motion (Etkin, Dynamics of Atmospheric Flight, chapter 6), slopes as above
 * @checked reference/wind-tunnel-swing
 */
export function swing(arrow: FlyingArrow, density: number, dragCoefficient: number): Swing | null {
  const { attitude, mass, diameter } = arrow;
  if (attitude === null) return null;
  const { transverseInertia: I, normalSlope, firstMoment, secondMoment } = attitude;
  const P = (density * Math.PI * diameter ** 2) / 8;
  const lift = normalSlope - dragCoefficient;
  const feed = (P * dragCoefficient) / mass - (P * secondMoment) / I;
  const damping = (P * lift) / mass - feed;
  const restoring = (-(P * lift) / mass) * feed - (1 + (P * firstMoment) / mass) * ((P * firstMoment) / I);
  if (!(restoring > 0)) return null;
  const { damped, decay } = oscillation(restoring, damping, 1);
  if (!(damped > 0 && decay > 0)) return null;
  return { wavelength: si((2 * Math.PI) / damped), dampingLength: si(1 / decay) };
}
