import { dragless } from './invented-rig.ts';

/**
 * Launch elevation that hits at R from the nock's place under no drag: with c = cos, s = sin of the elevation,
 * start (f c + h s, f s - h c), v^2 and g, the height at R is zero. Solved here by bisection on the closed form.
 */
export function draglessElevation(range: number): number {
  const { peepHeight: h, freeFlight: f } = dragless.geometry;
  const v = dragless.launchSpeed;
  const height = (a: number): number => {
    const [c, s] = [Math.cos(a), Math.sin(a)];
    const run = range - (f * c + h * s);
    return f * s - h * c + (run * s) / c - (9.80665 * run ** 2) / (2 * v ** 2 * c ** 2);
  };
  let [lo, hi] = [0, 0.3];
  for (let i = 0; i < 60; i += 1)
    if (height((lo + hi) / 2) < 0) lo = (lo + hi) / 2;
    else hi = (lo + hi) / 2;
  return (lo + hi) / 2;
}
