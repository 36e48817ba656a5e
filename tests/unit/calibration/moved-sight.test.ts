import { describe, expect, it } from 'vitest';
import { calibrate, estimateOf } from '../../../src/calibration/fit.ts';
import { calibrationMoved } from '../../../src/calibration/moved-sight.ts';
import { PARAMETERS } from '../../../src/calibration/parameters.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { yards } from '../sight/invented-rig.ts';
import { problem, shotMarks } from './invented-problem.ts';

const fitted = () => calibrate(problem(shotMarks([20, 40, 60], 0.0005)));
const ranges = [20, 40, 60, 80].map(yards);

describe('calibrationMoved', () => {
  it('a sight a tenth farther out reads the same at the zero range, and has a tenth more travel to every other', () => {
    const home = fitted();
    const { peepToPin } = home.rig.geometry;
    const out = calibrationMoved(home, { peepToPin: si(1.1 * peepToPin), peepHigher: si(0) });
    const [before, after] = [home, out].map(({ rig }) => marksFor(rig, ranges).marks);
    for (const [i, { travel, reading }] of (after ?? []).entries()) {
      const was = at(before ?? [], i);
      // Similar triangles, but that the arrow leaves a hair more upwards for a longer range: 1e-4 of it.
      expect(Math.abs(travel - 1.1 * was.travel)).toBeLessThan(1e-6 + 1e-4 * Math.abs(was.travel));
      const numbers = Number(was.reading) - Number(at(before ?? [], 0).reading);
      expect(Math.abs(Number(reading) - Number(was.reading) - 0.1 * numbers)).toBeLessThan(
        5e-3 /* numbers */,
      );
    }
    expect(out.problem.rig.geometry.peepToPin).toBe(1.1 * peepToPin);
    expect(out.values).toEqual(home.values);
  });

  it('a peep 5 mm higher is 5 mm higher everywhere that it is told, and as uncertain as before', () => {
    const home = fitted();
    const { peepToPin, peepHeight } = home.rig.geometry;
    const up = calibrationMoved(home, { peepToPin, peepHigher: si(0.005) });
    expect(up.rig.geometry.peepHeight).toBeCloseTo(peepHeight + 0.005, 12 /* m */);
    expect(up.problem.rig.geometry.peepHeight).toBeCloseTo(0.11684 + 0.005, 12 /* m */);
    expect(up.values.peep_height).toBeCloseTo(home.values.peep_height + 0.005, 12 /* m */);
    for (const name of PARAMETERS) {
      const [was, is] = [estimateOf(home, name), estimateOf(up, name)];
      expect(is).toEqual(name === 'peep_height' ? { ...was, value: up.values.peep_height } : was);
    }
    expect(up.covariance).toEqual(home.covariance);
  });
});
