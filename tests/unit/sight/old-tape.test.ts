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
  });
});
