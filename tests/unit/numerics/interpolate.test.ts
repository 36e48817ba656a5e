import { describe, expect, it } from 'vitest';
import {
  cubicHermite,
  monotoneCubic,
  quinticHermite,
  uniformCubic,
} from '../../../src/numerics/interpolate.ts';

const grid = (lo: number, hi: number, n: number) =>
  Array.from({ length: n }, (_, i) => lo + ((hi - lo) * i) / (n - 1));
const worstOver = (places: readonly number[], error: (x: number) => number) =>
  Math.max(...places.map((x) => Math.abs(error(x))));

describe('uniformCubic', () => {
  const sine = (n: number) => {
    const step = (2 * Math.PI) / (n - 1);
    return uniformCubic(
      0,
      step,
      Array.from({ length: n }, (_, i) => Math.sin(i * step)),
    );
  };

  it('passes through its values', () => {
    const spline = uniformCubic(2, 0.5, [1, -3, 4, 0, 2]);
    expect([2, 2.5, 3, 3.5, 4].map(spline)).toEqual([1, -3, 4, 0, 2]);
  });
  it('is a straight line through points on one, beside them too for half a step', () => {
    const line = uniformCubic(0, 2, [1, 2, 3, 4]);
    expect(worstOver([0, 0.7, 1.9, 3.3, 6], (x) => line(x) - (1 + x / 2))).toBeLessThan(1e-15 /* rounding */);
  });
  it('falls to a 16th of the error on half the step, sin(x) being straight at both ends', () => {
    const places = grid(0, 2 * Math.PI, 1001);
    const coarse = worstOver(places, (x) => sine(21)(x) - Math.sin(x));
    const fine = worstOver(places, (x) => sine(41)(x) - Math.sin(x));
    expect(coarse).toBeLessThan(
      (5 / 384) * (Math.PI / 10) ** 4 * 1.1 /* de Boor's constant; 10 % for the spline's slopes */,
    );
    expect(coarse / fine).toBeGreaterThan(15);
  });
  it.each([-1, 0, 1, 2, 3, 4, 5])('has no kink and no jump of curvature at %i steps', (place) => {
    const spline = uniformCubic(0, 1, [1, 3, -2, 0, 5]);
    const h = 1e-3;
    const at = (k: number) => spline(place + k * h);
    const slopes = [(at(0) - at(-1)) / h, (at(1) - at(0)) / h] as const;
    const bends = [(at(0) - 2 * at(-1) + at(-2)) / h ** 2, (at(2) - 2 * at(1) + at(0)) / h ** 2] as const;
    // Third derivatives reach 40 here: slopes differ by bend x h, bends by 40 x 2h.
    expect(Math.abs(slopes[1] - slopes[0])).toBeLessThan(0.1 /* per step */);
    expect(Math.abs(bends[1] - bends[0])).toBeLessThan(0.2 /* per step squared */);
  });
  it('levels off within one step of its end, half the end slope further', () => {
    const spline = uniformCubic(0, 2, [0, 1]);
    expect([4, 5, 1e9, Infinity].map(spline)).toEqual([1.5, 1.5, 1.5, 1.5]);
    expect([-2, -3, -1e9, -Infinity].map(spline)).toEqual([-0.5, -0.5, -0.5, -0.5]);
  });
  it.each([
    ['one value', 1, [3], 'singular'],
    ['no step', 0, [1, 2], 'singular'],
    ['a step backwards', -1, [1, 2], 'singular'],
    ['a hole', 1, [1, Number.NaN, 2], 'non-finite'],
  ])('refuses %s', (_, step, values, code) =>
    expect(() => uniformCubic(0, step, values)).toThrow(expect.objectContaining({ code })),
  );
  it('of values read backwards is its own mirror image, beyond the ends too', () => {
    const values = [1, 3, -2, 0, 5];
    const [forth, back] = [uniformCubic(0, 0.5, values), uniformCubic(0, 0.5, values.toReversed())];
    for (const x of [-0.8, -0.5, -0.3, 0, 0.2, 0.9, 1.7, 2, 2.2, 2.5, 3])
      expect(Math.abs(forth(x) - back(2 - x))).toBeLessThan(1e-14 /* rounding */);
  });
  it('refuses to be read at NaN', () => expect(() => uniformCubic(0, 1, [1, 2])(Number.NaN)).toThrow(/NaN/));
});

describe('monotoneCubic', () => {
  /** Pressure of a chemical reaction: data that make an ordinary spline overshoot. Invented for the purpose. */
  const xs = [0, 1, 2, 4, 5, 8, 9];
  const ys = [0, 0, 0.1, 6, 6.1, 6.1, 2];
  const table = monotoneCubic(xs, ys);

  it('passes through its points', () => expect(xs.map(table)).toEqual(ys));
  it('never leaves the values of the neighbours', () => {
    for (const [i, x] of xs.slice(0, -1).entries()) {
      const [lo, hi] = [ys[i] ?? 0, ys[i + 1] ?? 0].toSorted((a, b) => a - b);
      const read = grid(x, xs[i + 1] ?? x, 101).map(table);
      expect(Math.min(...read)).toBeGreaterThanOrEqual((lo ?? 0) - 1e-14);
      expect(Math.max(...read)).toBeLessThanOrEqual((hi ?? 0) + 1e-14);
    }
  });
  it('stays at the end values outside', () => expect([-5, 20].map(table)).toEqual([0, 2]));
  it('has slopes shortened to 3 secants where they are steeper together, by hand', () => {
    // Through (0, 0), (1, 1), (2, 11) secants are 1 and 10, slopes 1, 5.5 and 10. On the first interval their radius is
    // sqrt(1 + 5.5^2) = 5.5902, so they become 3/5.5902 = 0.53666 and 16.5/5.5902 = 2.95161. Half way along an interval of length
    // 1 a cubic stands at the mean of its values and an eighth of the difference of its slopes: 0.5 - 0.301869, 6 - 0.881049.
    const bent = monotoneCubic([0, 1, 2], [0, 1, 11]);
    expect(bent(0.5)).toBeCloseTo(0.198131, 6);
    expect(bent(1.5)).toBeCloseTo(5.118951, 6);
    expect(bent(1)).toBe(1);
  });
  it('is straight between two points', () => expect(monotoneCubic([0, 2], [1, 5])(0.5)).toBe(2));
  it('has one slope on both sides of a point', () => {
    const h = 1e-6;
    expect(Math.abs((table(4 + h) - 2 * table(4) + table(4 - h)) / h)).toBeLessThan(
      1e-4 /* of the slope: what a bend adds over the step of 1e-6 */,
    );
  });
  it('follows a smooth rise to the third order', () => {
    const error = (n: number) => {
      const places = grid(0.2, 1.2, n);
      const smooth = monotoneCubic(places, places.map(Math.sin));
      return worstOver(grid(0.3, 1.1, 500), (x) => smooth(x) - Math.sin(x));
    };
    expect(error(11) / error(21)).toBeGreaterThan(7);
  });
  it.each([
    ['places that do not rise', [0, 1, 1], [1, 2, 3], 'singular'],
    ['places that fall', [1, 0], [1, 2], 'singular'],
    ['one point', [1], [1], 'singular'],
    ['a value too few', [0, 1], [1], 'singular'],
    ['a place at infinity', [0, Infinity], [1, 2], 'non-finite'],
  ])('refuses %s', (_, x, y, code) =>
    expect(() => monotoneCubic(x, y)).toThrow(expect.objectContaining({ code })),
  );
  it('refuses to be read at NaN', () => expect(() => table(Number.NaN)).toThrow(/NaN/));
});

describe('cubicHermite', () => {
  it.each([0, 0.25, 0.5, 0.9, 1])('is exact for a third power, at t = %f', (t) => {
    const third = (x: number): [number, number] => [x ** 3 - x, 3 * x ** 2 - 1];
    expect(Math.abs(cubicHermite(2, t, ...third(1), ...third(3)) - third(1 + 2 * t)[0])).toBeLessThan(
      1e-13 /* rounding */,
    );
  });
  it('errs on sin(x) by at most h^4/384', () => {
    const h = 0.5;
    const sine = (x: number): [number, number] => [Math.sin(x), Math.cos(x)];
    const error = worstOver(
      grid(0, 1, 101),
      (t) => cubicHermite(h, t, ...sine(1.3), ...sine(1.3 + h)) - Math.sin(1.3 + t * h),
    );
    expect(error).toBeLessThanOrEqual(h ** 4 / 384);
    expect(error).toBeGreaterThan((h ** 4 / 384) * 0.9);
  });
});

describe('quinticHermite', () => {
  type End = readonly [number, number, number];
  const read = (h: number, t: number, [y0, d0, c0]: End, [y1, d1, c1]: End) =>
    quinticHermite(h, t, y0, d0, c0, y1, d1, c1);
  const fifth = (x: number): End => [x ** 5 - x ** 2, 5 * x ** 4 - 2 * x, 20 * x ** 3 - 2];

  it.each([0, 0.25, 0.5, 0.9, 1])('is exact for a fifth power, at t = %f', (t) => {
    const [value] = fifth(1 + 2 * t);
    expect(Math.abs(read(2, t, fifth(1), fifth(3)) - value)).toBeLessThan(1e-12 /* rounding of powers */);
  });
  it('errs on sin(x) by at most (h/2)^6/720', () => {
    const sine = (x: number): End => [Math.sin(x), Math.cos(x), -Math.sin(x)];
    const h = 0.5;
    const error = worstOver(
      grid(0, 1, 101),
      (t) => read(h, t, sine(1.3), sine(1.3 + h)) - Math.sin(1.3 + t * h),
    );
    expect(error).toBeLessThanOrEqual((h / 2) ** 6 / 720);
    expect(error).toBeGreaterThan(((h / 2) ** 6 / 720) * 0.9);
  });
});
