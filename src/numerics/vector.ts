import { NumericalError } from './numerical-error.ts';

/** Components along three right-handed orthogonal axes. */
export type Vector3 = readonly [number, number, number];

export const add = (a: Vector3, b: Vector3): Vector3 => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];

export const subtract = (a: Vector3, b: Vector3): Vector3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];

export const scale = (v: Vector3, factor: number): Vector3 => [v[0] * factor, v[1] * factor, v[2] * factor];

export const dot = (a: Vector3, b: Vector3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

/** The right-handed product: x cross y is z. */
export const cross = (a: Vector3, b: Vector3): Vector3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/**
 * The square root of the sum of squares; Math.hypot guards against overflow at a third more cost in the right-hand sides
 * that use this.
 */
export const length = (v: Vector3): number => Math.sqrt(v[0] * v[0] + v[1] * v[1] + v[2] * v[2]);

/**
 * The vector of length 1 with the direction of `v`.
 *
 * @throws NumericalError 'singular' for a vector without a direction (zero or not finite)
 */
export function unit(v: Vector3): Vector3 {
  const size = length(v);
  if (!(size > 0 && size < Infinity))
    throw new NumericalError('singular', `the vector (${v.join(', ')}) has no direction`);
  return scale(v, 1 / size);
}

/**
 * `v` turned by `angle` about `axis`, right-handed: the thumb along the axis, the fingers curl the way it turns.
 *
 *   v' = v cos a + (n x v) sin a + n (n . v)(1 - cos a)
 *
 * @param axis a vector of length 1; another length is not corrected
 * @param angle radians
 * @source Rodrigues' rotation formula, e.g. Goldstein, Classical Mechanics, 2nd ed., eq. 4-92 (from memory)
 */
export function rotate(v: Vector3, axis: Vector3, angle: number): Vector3 {
  const cosine = Math.cos(angle);
  const sine = Math.sin(angle);
  const [nx, ny, nz] = axis;
  const [cx, cy, cz] = cross(axis, v);
  const along = dot(axis, v) * (1 - cosine);
  return [
    v[0] * cosine + cx * sine + nx * along,
    v[1] * cosine + cy * sine + ny * along,
    v[2] * cosine + cz * sine + nz * along,
  ];
}
