import { describe, expect, it } from 'vitest';
import { guessScale } from '../../../src/calibration/scale-guess.ts';
import { at } from '../../../src/numerics/at.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';

const ranges = [50, 20, 35, 60].map(yards);
const travels = (): readonly number[] => marksFor(inventedRig, ranges).marks.map(({ travel }) => travel);
const readings = [31, 12.2, 20.5, 40.1];
const points = ranges.map((range, i) => ({ range, reading: at(readings, i) }));

describe('guessScale', () => {
  it('of more readings than two is the straight line that leaves nothing on the whole, nor along the travel', () => {
    const { travelPerUnit, direction, atZero } = guessScale(inventedRig, 1, points);
    const left = travels().map(
      (travel, i) => at(readings, i) - atZero - (direction * travel) / travelPerUnit,
    );
    // The normal equations of a straight line.
    expect(Math.abs(left.reduce((sum, value) => sum + value, 0))).toBeLessThan(1e-9 /* numbers, rounding */);
    expect(Math.abs(left.reduce((sum, value, i) => sum + value * at(travels(), i), 0))).toBeLessThan(
      1e-9 /* numbers times m, rounding */,
    );
  });

  it('of readings that do not change has no scale, and names the nearest and the farthest', () => {
    const flat = points.map(({ range }) => ({ range, reading: 7 }));
    expect(() => guessScale(inventedRig, 1, flat)).toThrow(
      'the file says, 7 at 20.0 yd (18.3 m) and 7 at 60.0 yd (54.9 m)?',
    );
  });

  it('of readings that grow the other way names them, whichever way the file says', () => {
    const there = '12.2 at 20.0 yd (18.3 m) and 40.1 at 60.0 yd (54.9 m)?';
    expect(() => guessScale(inventedRig, -1, points)).toThrow(there);
    const back = points.map(({ range, reading }) => ({ range, reading: -reading }));
    expect(() => guessScale(inventedRig, 1, back)).toThrow('-12.2 at 20.0 yd (18.3 m)');
    expect(guessScale(inventedRig, -1, back).travelPerUnit).toBe(
      guessScale(inventedRig, 1, points).travelPerUnit,
    );
  });
});
