import { describe, expect, it } from 'vitest';
import { type CalibrationProblem, calibrate } from '../../../src/calibration/fit.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import type { Measurement, PencilMark } from '../../../src/calibration/measurement.ts';
import { unseenSlip } from '../../../src/calibration/unseen-slip.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { priors, problem, shotMarks } from './invented-problem.ts';

const far = si<'m'>(yards(90));
const known = { ...priors, scale_offset: { value: 0, sd: 0.3 } };
const fitted = (measurements: readonly Measurement[], more: Partial<CalibrationProblem> = {}) =>
  calibrate({ ...problem(measurements), priors: known, ...more });
const heightPerUnit = (fit: ReturnType<typeof fitted>): number =>
  Math.abs(at(markUncertainty(fit, marksFor(fit.rig, [far])), 0).heightPerUnit);
const farReading = (fit: ReturnType<typeof fitted>): number =>
  Number(marksFor(fit.rig, [far]).marks[0]?.reading);

describe('the largest slip that goes unseen', () => {
  it('is that of the mark in which it would move the far mark most, by fits with a little of it in each', () => {
    const marks = shotMarks([20, 40, 60], 7e-4);
    const fit = fitted(marks);
    const little = 0.05; // numbers
    const slips = marks.map((_, index) => {
      const off = fitted(
        marks.map((mark, i) =>
          i === index && mark.kind === 'mark' ? { ...mark, reading: mark.reading + little } : mark,
        ),
      );
      const judged = Math.abs(at(off.residuals, index).studentised - at(fit.residuals, index).studentised);
      const numbers = (3 / judged) * little;
      const shift = (Math.abs(farReading(off) - farReading(fit)) / little) * numbers * heightPerUnit(fit);
      return { numbers, shift, range: at(marks, index).range };
    });
    const [worst = expect.fail()] = slips.toSorted((a, b) => b.shift - a.shift);
    const slip = unseenSlip(fit, far) ?? expect.fail();
    expect(slip.range).toBe(worst.range);
    expect(slip.mark.range).toBe(worst.range);
    expect(slip.farRange).toBe(far);
    expect(Math.abs(Number(slip.numbers) / worst.numbers - 1)).toBeLessThan(
      0.02 /* relative: taken as straight */,
    );
    expect(Math.abs(slip.shift / worst.shift - 1)).toBeLessThan(0.02 /* relative */);
    const [sure] = markUncertainty(fit, marksFor(fit.rig, [far]));
    expect(slip.farSd).toBe(sure?.onTargetSd);
  });

  it('of the one mark that alone says where the scale is has no end: each number moves every mark by a number', () => {
    const fit = fitted(shotMarks([20], 7e-4), { priors });
    const slip = unseenSlip(fit, far) ?? expect.fail();
    expect(slip.numbers).toBeNull();
    expect(Math.abs(slip.shift / heightPerUnit(fit) - 1)).toBeLessThan(
      0.01 /* relative: priors pull a little */,
    );
  });

  it('of a line that alone says how far a strip goes moves every line with it', () => {
    const [mark] = marksFor(inventedRig, [yards(60)]).marks;
    if (mark === undefined) expect.fail();
    const line: PencilMark = {
      kind: 'pencil',
      range: si(yards(60)),
      onTape: 1.5 * mark.travel,
      lineAt: null,
      vertical: 0,
      sd: si(0.04),
      cant: si(0),
      day: null,
    };
    const fit = fitted([line], {
      rig: { ...inventedRig, scale: null },
      priors: {
        ...known,
        scale_offset: { value: 0, sd: 1e-9 },
        launch_speed: { value: inventedRig.launchSpeed, sd: 1e-6 },
        drag_scale: { value: 1, sd: 1e-6 },
        peep_height: { value: inventedRig.geometry.peepHeight, sd: 1e-7 },
        tape_ratio: { value: 1.5, sd: 15, yardstick: 0.3 },
      },
    });
    const slip = unseenSlip(fit, far) ?? expect.fail();
    expect(slip.numbers).toBeNull();
    // A millimetre on the strip at 60 yd is as much more at 90 yd as the pin travels farther, and 1/1.5 of it on the pin.
    const [there] = marksFor(inventedRig, [far]).marks;
    const pin = (1e-3 / 1.5) * (Number(there?.travel) / mark.travel);
    const expected = pin * Math.abs(Number(there?.heightPerTravel));
    expect(Math.abs(slip.shift / expected - 1)).toBeLessThan(0.01 /* relative: straight in a millimetre */);
  });

  it('is none where no slip would move the far mark: everything is known', () => {
    const sure = {
      launch_speed: { value: inventedRig.launchSpeed, sd: 1e-12 },
      drag_scale: { value: 1, sd: 1e-12 },
      peep_height: { value: inventedRig.geometry.peepHeight, sd: 1e-14 },
      scale_ratio: { value: 1, sd: 1e-12 },
      scale_offset: { value: 0, sd: 1e-12 },
    };
    const slip = unseenSlip(fitted(shotMarks([20, 40], 7e-4), { priors: sure }), far);
    expect(slip === null ? 0 : slip.shift).toBeLessThan(1e-9 /* m */);
  });

  it('of chronographs and drops is none', () => {
    const speed: Measurement = { kind: 'speed', range: si(30), speed: si(80), sd: si(0.3), day: null };
    expect(unseenSlip(fitted([speed]), far)).toBeNull();
    // And beside a mark it is the mark's own, by its place among all.
    const marks = [speed, ...shotMarks([30], 7e-4)];
    expect(unseenSlip(fitted(marks), far)?.range).toBeCloseTo(yards(30), 9 /* m */);
  });
});
