import type { Vector3 } from '../numerics/vector.ts';
import type { FlightConditions } from './conditions.ts';

/** Heights below this are taken as this in the wind's power law, so that it stays finite at the ground. */
export const LOWEST_WIND_HEIGHT = 0.05; // m

/**
 * The velocity of the air in the line-of-sight frame, m/s, by height above the line of sight, m.
 *
 * The wind told by speed and bearing blows along the line of sight's own slope and grows with height; air that rises does so
 * plumb, and alike at every height.
 */
export function airAt({
  wind: { tail, across, up, shear, referenceHeight },
  slope,
  eyeHeight,
}: Pick<FlightConditions, 'wind' | 'slope' | 'eyeHeight'>): (height: number) => Vector3 {
  const [along, square] = risingAir(up, slope);
  return (height) => {
    const gust =
      shear === 0 ? 1 : (Math.max(eyeHeight + height, LOWEST_WIND_HEIGHT) / referenceHeight) ** shear;
    return [gust * tail + along, square, gust * across];
  };
}

/** Air that rises at `up` (m/s), along the line of sight and square to it. */
export const risingAir = (up: number, slope: number): readonly [along: number, square: number] => [
  up * Math.sin(slope),
  up * Math.cos(slope),
];
