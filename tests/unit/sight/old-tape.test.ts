import { describe, expect, it } from 'vitest';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { oldMarks, oldTape } from '../../../src/sight/old-tape.ts';
import { draglessElevation } from './dragless-elevation.ts';
import { dragless, yards } from './invented-rig.ts';

/** By hand, without drag: the pin stands E tan(elevation) below the eye's parallel to the arrow. E is 0.8382 m. */
const pin = (range: number): number => 0.8382 * Math.tan(draglessElevation(range));
const down = (label: number): number => pin(yards(label)) - pin(yards(20));
const labels = Array.from({ length: 81 }, (_, i) => 20 + i);

/** A tape whose every number stands where the new one has the range `shift` yards beyond it; its 20 at 20. */
const shifted = (shift: number) =>
  oldTape(
    labels.map((label) => ({
      range: si<'m'>(yards(label)),
      along: si<'m'>(label === 20 ? 0 : 1.5 * down(label + shift * ((label - 20) / 80))),
    })),
  );

describe('an old tape', () => {
  const ranges = [20, 40, 60, 80, 100].map((label) => si<'m'>(yards(label)));

  it('is right where it is the same tape', () => {
    for (const { range, use, height } of oldMarks(dragless, shifted(0), ranges, 1.5)) {
      expect(Math.abs((use ?? Number.NaN) - range)).toBeLessThan(1e-6 /* m: what the solution leaves */);
      expect(Math.abs(height ?? Number.NaN)).toBeLessThan(1e-5 /* m: a hundredth of a millimetre of hit */);
    }
  });

  // With numbers that run 4 yd ahead by 100, the number N for a range R is where N + 4 (N - 20)/80 = R.
  it('names the number that stands where the range belongs', () => {
    for (const { range, use } of oldMarks(dragless, shifted(4), ranges, 1.5)) {
      const yd = range / 0.9144;
      const number = (yd + 1) / 1.05;
      expect(Math.abs((use ?? Number.NaN) / 0.9144 - number)).toBeLessThan(0.02 /* yd: read in proportion */);
    }
  });

  it('says where its own number hits: as high as the path of the longer range is there', () => {
    const row = at(oldMarks(dragless, shifted(4), ranges, 1.5), 4);
    // The 100 of the old tape is the mark of 104 yd, whose path lies above the line of sight at 100 yd, by hand:
    const elevation = draglessElevation(yards(104));
    const { peepHeight: h, freeFlight: f } = dragless.geometry;
    const [c, s] = [Math.cos(elevation), Math.sin(elevation)];
    const run = yards(100) - (f * c + h * s);
    const height =
      f * s - h * c + (run * s) / c - (9.80665 * run ** 2) / (2 * dragless.launchSpeed ** 2 * c ** 2);
    expect(height).toBeGreaterThan(0.1);
    expect(Math.abs((row.height ?? Number.NaN) - height)).toBeLessThan(
      1e-4 /* m: the law of the pin in closed form */,
    );
  });

  it('has no number beyond its last and none that it lacks', () => {
    const short = oldTape(shifted(0).places.filter(({ range }) => range < yards(70)));
    const rows = oldMarks(dragless, short, ranges, 1.5);
    expect(rows.map(({ use, height }) => [use === null, height === null])).toEqual([
      [false, false],
      [false, false],
      [false, false],
      [true, true],
      [true, true],
    ]);
  });

  it('is read from its turning point on, where it has one', () => {
    const places = [8, 10, 14, 20, 30].map((label) => ({
      range: si<'m'>(label),
      along: si<'m'>(3 / label + label / 70),
    }));
    expect(oldTape(places).places.map(({ range }) => range)).toEqual([14, 20, 30]);
    expect(oldTape([3, 1, 4, 0, 2].flatMap((i) => places.slice(i, i + 1)))).toEqual(oldTape(places));
  });

  it('is read in proportion between its marks, and not before its first', () => {
    const coarse = oldTape(
      [
        [20, 0],
        [30, 0.01],
        [50, 0.03],
        [100, 0.2],
      ].map(([label = 0, along = 0]) => ({ range: si<'m'>(yards(label)), along: si<'m'>(along) })),
    );
    const [before, near, far] = oldMarks(
      dragless,
      coarse,
      [10, 40, 75].map((label) => si<'m'>(yards(label))),
      1.5,
    );
    expect(before?.height).toBeNull();
    // Where the new tape has 40 and 75, by hand, and what part of the way from mark to mark of the old one that is.
    const [forty, seventyFive] = [1.5 * down(40), 1.5 * down(75)];
    expect([forty > 0.01 && forty < 0.03, seventyFive > 0.03 && seventyFive < 0.2]).toEqual([true, true]);
    expect((near?.use ?? 0) / 0.9144).toBeCloseTo(30 + (20 * (forty - 0.01)) / 0.02, 3);
    expect((far?.use ?? 0) / 0.9144).toBeCloseTo(50 + (50 * (seventyFive - 0.03)) / 0.17, 3);
  });

  it('serves the same wherever its numbers are counted from, and lies with its own start at the zero where it lacks that', () => {
    const places = shifted(4).places;
    const moved = oldTape(places.map(({ range, along }) => ({ range, along: si<'m'>(along + 0.1) })));
    const rows = oldMarks(dragless, shifted(4), ranges, 1.5);
    for (const [i, { use, height }] of oldMarks(dragless, moved, ranges, 1.5).entries()) {
      expect(use).toBeCloseTo(at(rows, i).use ?? Number.NaN, 8);
      expect(height).toBeCloseTo(at(rows, i).height ?? Number.NaN, 8);
    }
    const without = oldTape(places.slice(1));
    for (const [i, { use, height }] of oldMarks(dragless, without, ranges.slice(1), 1.5).entries()) {
      expect(use).toBeCloseTo(at(rows, i + 1).use ?? Number.NaN, 6);
      expect(height).toBeCloseTo(at(rows, i + 1).height ?? Number.NaN, 6);
    }
  });

  it('says how high its far numbers hit, on the paths of the pins that were asked for and beyond them', () => {
    const far = oldTape(
      labels.map((label) => ({
        range: si<'m'>(yards(label)),
        along: si<'m'>(1.5 * down(label + (label - 20) / 4)),
      })),
    );
    // Its 60 is the mark of 70 yd, its 100 that of 120 yd: heights of those paths, by hand as above.
    const heightOf = (set: number, label: number): number => {
      const elevation = draglessElevation(yards(set));
      const { peepHeight: h, freeFlight: f } = dragless.geometry;
      const [c, s] = [Math.cos(elevation), Math.sin(elevation)];
      const run = yards(label) - (f * c + h * s);
      return f * s - h * c + (run * s) / c - (9.80665 * run ** 2) / (2 * dragless.launchSpeed ** 2 * c ** 2);
    };
    const rows = oldMarks(dragless, far, ranges, 1.5);
    expect(Math.abs((at(rows, 2).height ?? Number.NaN) - heightOf(70, 60))).toBeLessThan(
      1e-6 /* m: a shared path */,
    );
    expect(Math.abs((at(rows, 4).height ?? Number.NaN) - heightOf(120, 100))).toBeLessThan(
      0.005 /* m of 2: taken in proportion */,
    );
  });
});
