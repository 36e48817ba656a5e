import { describe, expect, it } from 'vitest';
import { varianceDraw } from '../../../src/numerics/gamma-draw.ts';
import { randomStream } from '../../../src/numerics/random.ts';

const DRAWS = 20_000;

it.each([0.5, 1, 1.98, 2.93, 5, 20])(
  'variances of %f degrees of freedom have mean 1 and variance 2/freedom',
  (freedom) => {
    const stream = randomStream(14, 0);
    const drawn = Array.from({ length: DRAWS }, () => varianceDraw(stream, freedom));
    const mean = drawn.reduce((sum, value) => sum + value, 0) / DRAWS;
    const variance = drawn.reduce((sum, value) => sum + (value - mean) ** 2, 0) / DRAWS;
    // four standard errors; the variance of a variance has the fourth moment, (2 + 12/freedom)/draws relative
    expect(Math.abs(mean - 1)).toBeLessThan(4 * Math.sqrt(2 / freedom / DRAWS));
    expect(Math.abs((variance * freedom) / 2 - 1)).toBeLessThan(4 * Math.sqrt((2 + 12 / freedom) / DRAWS));
  },
);

describe('a draw, by hand', () => {
  /** Numbers in the order in which they are drawn. */
  const stream = (normals: readonly number[], uniforms: readonly number[]) => {
    const [normal, uniform] = [[...normals], [...uniforms]];
    return { normal: () => normal.shift() ?? Number.NaN, uniform: () => uniform.shift() ?? Number.NaN };
  };
  /** d v over the shape, d = shape - 1/3, v = (1 + z / sqrt(9 d))^3. */
  const kept = (shape: number, z: number): number => {
    const d = shape - 1 / 3;
    return (d * (1 + z / Math.sqrt(9 * d)) ** 3) / shape;
  };

  it.each([0.5, -1.2])('keeps a normal number of %d as what it stands for', (z) =>
    expect(varianceDraw(stream([z], [0.3]), 8)).toBeCloseTo(kept(4, z), 14),
  );
  it('draws again where the cube is negative, without another number for that', () =>
    expect(varianceDraw(stream([-20, 0.5], [0.3]), 8)).toBeCloseTo(kept(4, 0.5), 14));
  it('draws again where the law is below the cubed normal number', () => {
    // Of shape 1, d = 2/3: far out the logarithm of what is kept, z^2/2 + d - d v + d ln v, is below that of 1/2.
    const z = 3.5;
    const v = (1 + z / Math.sqrt(6)) ** 3;
    expect((z * z) / 2 + 2 / 3 - (2 / 3) * v + (2 / 3) * Math.log(v)).toBeLessThan(Math.log(0.5));
    expect(varianceDraw(stream([z, 0.5], [0.5, 0.3]), 2)).toBeCloseTo(kept(1, 0.5), 14);
  });
  it('of a shape below 1 is one of a shape larger by 1, times a uniform number to the power of 1 over the shape', () =>
    // Of one degree of freedom: the shape 1/2, over which the draw of shape 3/2 times 0.7^2 stands.
    expect(varianceDraw(stream([0.5], [0.3, 0.7]), 1)).toBeCloseTo((kept(1.5, 0.5) * 1.5 * 0.49) / 0.5, 14));
  it.each([0, -2, Number.NaN])('of %d degrees of freedom is refused', (freedom) =>
    expect(() => varianceDraw(stream([0.5], [0.3]), freedom)).toThrow(/no gamma distribution/),
  );
});
