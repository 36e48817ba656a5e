import { describe, expect, it } from 'vitest';
import { at } from '../../../src/numerics/at.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { pinHits } from '../../../src/sight/pins.ts';
import { draglessElevation } from './dragless-elevation.ts';
import { dragless, yards } from './invented-rig.ts';

const END = yards(100);
const table = marksFor(dragless, [20, 30, 40, 100].map(yards));
const downAt = (i: number): number => table.zero.down + at(table.marks, i).travel;

/** By hand, without drag: height above the line of sight at a range with the elevation that hits at another. */
function heightBetween(set: number, range: number): number {
  const a = draglessElevation(yards(set));
  const { peepHeight: h, freeFlight: f } = dragless.geometry;
  const [c, s] = [Math.cos(a), Math.sin(a)];
  const run = range - (f * c + h * s);
  return f * s - h * c + (run * s) / c - (9.80665 * run ** 2) / (2 * dragless.launchSpeed ** 2 * c ** 2);
}

describe('a pin that stands still', () => {
  it.each([
    [0, 20],
    [1, 30],
    [2, 40],
  ])('is on for the range it was set for (%i)', (i, label) => {
    const { range } = pinHits(table.paths, downAt(i), 0.2, END);
    expect(Math.abs((range ?? Number.NaN) - yards(label))).toBeLessThan(2e-4 /* m: as a crossing is found */);
  });

  it.each([
    [0, 20],
    [2, 40],
  ])('holds a ring from where the arrow comes into it to where it leaves it, by hand (%i)', (i, label) => {
    const ring = 0.2;
    const { from, to } = pinHits(table.paths, downAt(i), ring, END);
    // The path of the 20 stays below the ring's top; that of the 40 rises 13 cm above the line and falls back into the ring.
    const steps = Array.from({ length: 100000 }, (_, k) => table.paths.start + k * 1e-3).filter(
      (x) => x < END,
    );
    const inside = steps.filter((x) => Math.abs(heightBetween(label, x)) <= ring / 2);
    const last = Math.max(...inside);
    const outsideBefore = steps.filter((x) => x < last && Math.abs(heightBetween(label, x)) > ring / 2);
    const first = Math.min(...inside.filter((x) => outsideBefore.every((y) => y < x)));
    expect(Math.abs((to ?? Number.NaN) - last)).toBeLessThan(2e-3 /* m: the step of the search */);
    expect(Math.abs((from ?? Number.NaN) - first)).toBeLessThan(2e-3 /* m */);
  });

  it('is on for nothing where its path never comes up to the line of sight', () => {
    const { range, from, to } = pinHits(table.paths, downAt(0) - 0.02, 0.02, END);
    expect([range, from, to]).toEqual([null, null, null]);
  });

  /**
   * By hand: the first range from `from` on at which the height with the elevation for `label` passes `level`, downwards or
   * up.
   */
  const passes = (label: number, level: number, from: number, to: number): number => {
    const sign = Math.sign(heightBetween(label, from) - level);
    let [a, b] = [from, to];
    for (let i = 0; i < 60; i += 1)
      if (Math.sign(heightBetween(label, (a + b) / 2) - level) === sign) a = (a + b) / 2;
      else b = (a + b) / 2;
    return a;
  };
  const near = (found: number | null, expected: number) =>
    expect(Math.abs((found ?? Number.NaN) - expected)).toBeLessThan(2e-4 /* m: as a crossing is found */);

  it('holds a ring that it starts in from the start on', () => {
    const { from, to } = pinHits(table.paths, downAt(0), 0.3, END);
    expect(from).toBe(table.paths.start);
    near(to, passes(20, -0.15, 15, END));
  });

  it('comes up into a small ring on the way, by hand', () => {
    const { from } = pinHits(table.paths, downAt(0), 0.05, END);
    near(from, passes(20, -0.025, table.paths.start, 10));
  });

  it('is on for nothing within the ranges flown where it comes down behind them, and leaves no ring there', () => {
    // The 100 yd pin is still on its way up at 2 yd: into the ring from below, by hand, and no farther.
    const { range, from, to } = pinHits(table.paths, downAt(3), 0.06, yards(2));
    expect([range, to]).toEqual([null, null]);
    near(from, passes(100, -0.03, table.paths.start, yards(2)));
    // At 60 yd it is past its top, high above the ring.
    const past = pinHits(table.paths, downAt(3), 0.2, yards(60));
    expect([past.range, past.from, past.to]).toEqual([null, null, null]);
  });

  it('that stands so high that the arrow only falls holds a ring from the start on, and is on for nothing', () => {
    const elevation = Math.atan2(-0.001, 0.8382);
    const { range, from, to } = pinHits(table.paths, -0.001, 0.3, END);
    expect(range).toBeNull();
    expect(from).toBe(table.paths.start);
    const {
      peepHeight: h,
      freeFlight: f,
      launchSpeed: v,
    } = { ...dragless.geometry, launchSpeed: dragless.launchSpeed };
    const [c, s] = [Math.cos(elevation), Math.sin(elevation)];
    // Below the line by 0.15 m where start, slope and fall add up to it: a quadratic in the run.
    const [a, b, k] = [-9.80665 / (2 * v ** 2 * c ** 2), s / c, f * s - h * c + 0.15];
    const run = (-b - Math.sqrt(b ** 2 - 4 * a * k)) / (2 * a);
    near(to, f * c + h * s + run);
  });
});
