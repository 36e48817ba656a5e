import { describe, expect, it } from 'vitest';
import { lineZero } from '../../../src/numerics/fieller.ts';
import { independent, lineThrough } from '../../../src/numerics/weighted-line.ts';

describe("zero of a line with Fieller's interval", () => {
  const line = {
    intercept: -2,
    slope: 0.5,
    covariance: [
      [0.05, -0.01],
      [-0.01, 0.004],
    ],
  };
  const inside = (x: number, t: number): boolean =>
    (line.intercept + line.slope * x) ** 2 <= t ** 2 * (0.05 - 0.02 * x + 0.004 * x ** 2);

  it('has the ends that the inequality has on a fine grid', () => {
    const t = 2.3;
    const step = 1e-5;
    const grid = Array.from({ length: 2_000_000 }, (_, i) => i * step).filter((x) => inside(x, t));
    const [low = Number.NaN, high = Number.NaN] = lineZero(line, t).interval ?? [];
    expect(Math.abs(low - (grid[0] ?? 0))).toBeLessThan(step /* of the grid */);
    expect(Math.abs(high - (grid.at(-1) ?? 0))).toBeLessThan(step /* of the grid */);
  });
  it('is where the line passes 0, inside its interval', () => {
    const { place, interval } = lineZero(line, 2);
    expect(place).toBe(4);
    expect(interval?.[0]).toBeLessThan(4);
    expect(interval?.[1]).toBeGreaterThan(4);
  });
  it('has by its derivatives, -1/b1 = -2 and b0/b1^2 = -8, a variance of 4 x 0.05 - 32 x 0.01 + 64 x 0.004 = 0.136', () =>
    expect(lineZero(line, 2).sd).toBeCloseTo(Math.sqrt(0.136), 14));
  it('and of errors that do not hang together 4 x 0.05 + 64 x 0.004 = 0.456', () => {
    const apart = [
      [0.05, 0],
      [0, 0.004],
    ];
    expect(lineZero({ ...line, covariance: apart }, 2).sd).toBeCloseTo(Math.sqrt(0.456), 14);
  });
  it('has no interval when the slope is not sure', () =>
    expect(lineZero({ ...line, slope: 0.1 }, 2).interval).toBeNull());
  it('has an interval of no width when nothing is uncertain', () =>
    expect(
      lineZero(
        {
          ...line,
          covariance: [
            [0, 0],
            [0, 0],
          ],
        },
        2,
      ).interval,
    ).toEqual([4, 4]));
});

describe('line through readings', () => {
  it('goes through two readings exactly, with the errors that the two ends give', () => {
    const line = lineThrough([1, 3], [5, 1], independent([0.04, 0.09]));
    expect(line.intercept).toBeCloseTo(7, 12);
    expect(line.slope).toBeCloseTo(-2, 12);
    expect(line.chiSquared).toBeCloseTo(0, 20);
    // (0.04 + 0.09)/2², by hand
    expect(line.covariance[1]?.[1]).toBeCloseTo(0.0325, 12);
  });
  it('with errors that all readings share, the slope is as sure as without them', () => {
    const shared = [
      [1.04, 1],
      [1, 1.09],
    ];
    const line = lineThrough([1, 3], [5, 1], shared);
    expect(line.covariance[1]?.[1]).toBeCloseTo(0.0325, 10);
  });
  it('three readings off a line: the sum of squares by hand', () => {
    // mean line of 0, 1, 0 is 1/3, residuals -1/3, 2/3, -1/3
    const line = lineThrough([-1, 0, 1], [0, 1, 0], independent([1, 1, 1]));
    expect(line.intercept).toBeCloseTo(1 / 3, 12);
    expect(line.chiSquared).toBeCloseTo(6 / 9, 12);
  });
});
