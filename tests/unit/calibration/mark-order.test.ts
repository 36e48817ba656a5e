import { describe, expect, it } from 'vitest';
import type { DaySetting } from '../../../src/calibration/day-setting.ts';
import { calibrate } from '../../../src/calibration/fit.ts';
import { backwards } from '../../../src/calibration/mark-order.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import type { PencilMark, ShotMark } from '../../../src/calibration/measurement.ts';
import { besideOf } from '../../../src/calibration/parameters.ts';
import { predict } from '../../../src/calibration/prediction.ts';
import { predictedSd, wouldRead, wouldReadBy } from '../../../src/calibration/would-read.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { markAt, priors, problem, rightReading, shotMarks } from './invented-problem.ts';

const E = 0.8382; // m from the peep to the pin
const lineAt = (range: number, onTape: number): PencilMark => ({
  ...markAt(range),
  kind: 'pencil',
  onTape,
  lineAt: null,
});
const pairsOf = (marks: readonly (ShotMark | PencilMark)[]): readonly (readonly number[])[] =>
  backwards(problem(marks)).map(({ near, far }) => [near.range, far.range]);

describe('marks run back', () => {
  const [near, far] = [yards(40), yards(60)];
  /** By how many of three standard uncertainties of the two pins the farther one stands higher. */
  const backBy = (share: number, sd = 0.02) => {
    // A group's height comes to E/R of it on the sight, to 1 % so far out.
    const unsure = 3 * Math.hypot((sd * E) / near, (sd * E) / far);
    const reading = rightReading(near) - (share * unsure) / 1e-3;
    return pairsOf([markAt(near, { sd: si(sd) }), markAt(far, { sd: si(sd), reading })]);
  };

  it('from three standard uncertainties of the two groups on', () => {
    expect(backBy(0.96)).toEqual([]);
    expect(backBy(1.04)).toEqual([[near, far]]);
  });

  it('where the bow says that the pin goes down by half of that or more', () => {
    const down = (rightReading(far) - rightReading(near)) * 1e-3;
    const sdFor = (share: number) => (2 * down * share) / (3 * Math.hypot(E / near, E / far));
    expect(backBy(3, sdFor(0.96))).toEqual([[near, far]]);
    expect(backBy(3, sdFor(1.04))).toEqual([]);
  });

  it('beside the next nearer ones alone, all of them', () => {
    const low = rightReading(near);
    const marks = [markAt(yards(30)), markAt(near), markAt(near + 0.3), markAt(far, { reading: 5 })];
    expect(pairsOf(marks)).toEqual([
      [near, far],
      [near + 0.3, far],
    ]);
    // Ranges half a metre apart are one, and in any order of the file.
    expect(pairsOf([markAt(near + 0.4, { reading: low - 10 }), markAt(near)])).toEqual([]);
    expect(pairsOf([markAt(far, { reading: 5 }), markAt(near)])).toEqual([[near, far]]);
  });

  it('by their heights too: a group a foot high with the pin of a foot less', () => {
    const reading = rightReading(far) - 5;
    const [height] = predict(inventedRig, [markAt(far, { reading })]);
    const high = markAt(far, { reading, vertical: Number(height) });
    expect(pairsOf([markAt(near), high])).toEqual([]);
    // Nearer than that reading the same height puts the expected pin as far off.
    const back = markAt(far, { reading: rightReading(near) - 5, vertical: 0 });
    expect(pairsOf([markAt(near), back])).toEqual([[near, far]]);
  });

  it('readings beside readings and lines beside lines', () => {
    const [line, lower] = [lineAt(near, 8e-3), lineAt(far, 2e-3)];
    expect(pairsOf([line, lower])).toEqual([[near, far]]);
    expect(pairsOf([markAt(near), lower])).toEqual([]);
    expect(pairsOf([line, markAt(far, { reading: 5 })])).toEqual([]);
  });

  it('of one arrow: another one has another order, and other air has not', () => {
    const { conditions, geometry, cant } = inventedRig;
    const usual: DaySetting = {
      air: conditions.air,
      wind: conditions.wind,
      freeFall: conditions.freeFall,
      cant,
      warmer: 0,
      arrow: null,
    };
    const other = {
      flying: conditions.arrow,
      freeFlight: geometry.freeFlight,
      speedRatio: 1,
      speedRatioSd: 0,
      dragSd: 0,
    };
    const back = (setting: DaySetting) => pairsOf([markAt(near), markAt(far, { reading: 5, setting })]);
    expect(back(usual)).toEqual([[near, far]]);
    expect(back({ ...usual, arrow: other })).toEqual([]);
  });

  it('on a sight without numbers by its lines', () => {
    const bare = {
      ...problem([lineAt(near, 8e-3), lineAt(far, 2e-3)]),
      rig: { ...inventedRig, scale: null },
    };
    const closed = { ...bare, priors: { ...priors, scale_offset: { value: 0, sd: 1 } } };
    expect(backwards(closed)).toHaveLength(1);
  });
});

describe('what would be written of a mark', () => {
  it('is the reading at which the same shot comes to the same height', () => {
    for (const vertical of [-0.3, 0, 0.2]) {
      const mark = markAt(yards(50), { reading: 20, vertical });
      const { written, heightPer } = wouldReadBy(inventedRig, besideOf({}), mark);
      const [there, more] = predict(inventedRig, [
        { ...mark, reading: written },
        { ...mark, reading: written + 0.01 },
      ]);
      expect(Math.abs(Number(there) - vertical)).toBeLessThan(1e-6 /* m: a thousandth of what can be shot */);
      const slope = (Number(more) - Number(there)) / 0.01;
      expect(Math.abs(heightPer / slope - 1)).toBeLessThan(1e-3 /* relative: a straight step */);
    }
  });

  it('is that of another range where the target stood there, and on a strip its place', () => {
    const mark = markAt(yards(50), { reading: 3 });
    const { written } = wouldReadBy(inventedRig, besideOf({}), mark, si(yards(70)));
    expect(written).toBeCloseTo(rightReading(yards(70)), 4 /* numbers */);
    const travel = (rightReading(yards(50)) - 12.4) * 1e-3;
    const line = wouldReadBy(inventedRig, besideOf({ tape_ratio: 1.5 }), lineAt(yards(50), 0));
    expect(line.written).toBeCloseTo(1.5 * travel, 7 /* m */);
  });

  it('goes by what the fit found of a sight without numbers', () => {
    const bare = { ...inventedRig, scale: null };
    const fit = calibrate({
      ...problem([]),
      rig: bare,
      priors: { ...priors, scale_offset: { value: 0.002, sd: 1e-4 } },
    });
    const { written } = wouldRead(fit, markAt(yards(50)));
    const travel = (rightReading(yards(50)) - 12.4) * 1e-3;
    expect(written).toBeCloseTo(0.002 + travel, 6 /* m: a reading of a scale in metres */);
  });

  it('is as sure as the mark of its range', () => {
    const fit = calibrate({
      ...problem(shotMarks([20, 50], 5e-4)),
      priors: { ...priors, scale_offset: { value: 0, sd: 1 } },
    });
    for (const range of [30, 60, 90].map(yards)) {
      const { marks } = marksFor(fit.rig, [range]);
      const [sure = expect.fail()] = markUncertainty(fit, marksFor(fit.rig, [range]));
      const sd = predictedSd(fit, markAt(range, { reading: at(marks, 0).reading ?? Number.NaN }));
      expect(Math.abs(sd / sure.onTargetSd - 1)).toBeLessThan(
        0.01 /* relative: another way to the same error */,
      );
    }
  });
});
