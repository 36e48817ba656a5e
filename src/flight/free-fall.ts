import type { Metres, Radians } from '../quantities/quantity.ts';

/**
 * The ellipsoid of the World Geodetic System 1984, as published. @source NIMA TR8350.2, third edition (1997), tables 3.1 to 3.4
 */
const ELLIPSOID = {
  /** Half the longer axis, m. */
  a: 6_378_137,
  flattening: 1 / 298.257223563,
  eccentricitySquared: 0.00669437999014,
  /** Of free fall at the equator and the sea, m/s². */
  equator: 9.7803253359,
  /** Of Somigliana's formula. */
  k: 0.00193185265241,
  /** ω²a²b/GM */
  m: 0.00344978650684,
};

/**
 * The acceleration of free fall of the even Earth, m/s²: what a still place has, its turning counted.
 *
 *   g₀ = gₑ (1 + k sin² φ)/√(1 − e² sin² φ),   g = g₀ [1 − 2 (1 + f + m − 2 f sin² φ) h/a + 3 (h/a)²]
 *
 * Hills and ores change it by under 1e-4 of itself: 0.02 in of drop at 100 yd.
 *
 * @param latitude north positive
 * @param altitude above the sea
 * @source Somigliana's formula and the free-air correction, NIMA TR8350.2, third edition (1997), equations 4-1 and 4-3
 * @checked reference/normal-gravity
 */
export function freeFallAt(latitude: Radians, altitude: Metres): number {
  const { a, flattening: f, eccentricitySquared, equator, k, m } = ELLIPSOID;
  const sine2 = Math.sin(latitude) ** 2;
  const atSea = (equator * (1 + k * sine2)) / Math.sqrt(1 - eccentricitySquared * sine2);
  const height = altitude / a;
  return atSea * (1 - 2 * (1 + f + m - 2 * f * sine2) * height + 3 * height * height);
}
