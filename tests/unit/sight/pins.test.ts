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
});
