import { describe, expect, it } from 'vitest';
import { findings } from '../../../src/calibration/diagnose.ts';
import { type Calibration, calibrate, estimateOf } from '../../../src/calibration/fit.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import { nextRange } from '../../../src/calibration/next-range.ts';
import { namedValues, PARAMETERS, withParameters } from '../../../src/calibration/parameters.ts';
import { guessScale } from '../../../src/calibration/scale-guess.ts';
import { randomStream } from '../../../src/numerics/random.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { priors, problem, shotMarks, truth } from './invented-problem.ts';

const tape = [20, 30, 40, 50, 60, 70, 80, 90, 100].map(yards);
const uncertaintyOf = (found: Calibration, ranges: readonly number[]) =>
  markUncertainty(found, marksFor(found.rig, ranges));
const normal = (seed: number) => {
  const random = randomStream(seed, 0);
  return () => random.normal();
};

describe('calibrate', () => {
  it('without marks gives the priors back', () => {
    const found = calibrate(problem([]));
    for (const parameter of found.parameters) {
      expect(Math.abs(parameter.value - parameter.priorValue)).toBeLessThan(
        1e-9 /* SI units of the parameter: the solver stops there at once */,
      );
      expect(Math.abs(parameter.sd / parameter.priorSd - 1)).toBeLessThan(1e-6 /* relative */);
      expect(parameter.verdict).toBe('mostly prior');
    }
    expect(found.chance).toBe(1);
    expect(findings(found)[0]?.kind).toBe('no marks');
  });

  it('with many exact marks and a speed down range comes to the true values', () => {
    const marks = shotMarks([5, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100], 1e-5);
    const found = calibrate(problem(marks));
    const real = namedValues([
      truth.launch_speed,
      truth.drag_scale,
      truth.peep_height,
      truth.scale_ratio,
      truth.scale_offset,
    ]);
    for (const name of PARAMETERS) {
      const { value, sd } = estimateOf(found, name);
      expect(Math.abs(value - real[name]) / sd).toBeLessThan(
        1 /* standard error: the priors still pull a little */,
      );
    }
    expect(estimateOf(found, 'drag_scale').verdict).toBe('measured');
  });

  it('over 200 seeds recovers what is true within its own stated errors', () => {
    const seeds = 200;
    const inside = new Map(PARAMETERS.map((name) => [name, 0]));
    let chiSquared = 0;
    let markChi = 0;
    for (let seed = 0; seed < seeds; seed += 1) {
      const random = normal(seed);
      // The truth itself is drawn from the priors, as a bow is from its measurements.
      const real = namedValues(
        PARAMETERS.map(
          (name) => priors[name].value + (name === 'scale_offset' ? 0.3 : priors[name].sd) * random(),
        ),
      );
      const found = calibrate(problem(shotMarks([20, 40, 60, 80], 0.0005, random, real)));
      for (const name of PARAMETERS) {
        const { value, sd } = estimateOf(found, name);
        if (Math.abs(value - real[name]) < 2 * sd) inside.set(name, (inside.get(name) ?? 0) + 1);
        if (name !== 'scale_offset') chiSquared += ((value - real[name]) / sd) ** 2;
      }
      const [sure] = uncertaintyOf(found, [yards(70)]);
      const reading = (rig: typeof inventedRig) => marksFor(rig, [yards(70)]).marks[0]?.reading ?? Number.NaN;
      markChi +=
        ((reading(found.rig) - reading(withParameters(inventedRig, real))) /
          (sure?.readingSd ?? Number.NaN)) **
        2;
    }
    // 95.4 % of normal errors lie within two standard errors; 200 draws give that to 1.5 %, three of which are allowed.
    for (const [name, count] of inside)
      expect({ name, share: count / seeds > 0.91 }).toEqual({ name, share: true });
    // Mean squares of standardised errors: 1, to three times sqrt(2/800) and sqrt(2/200); widening may only lower them.
    expect(chiSquared / (4 * seeds)).toBeLessThan(1.15);
    expect(chiSquared / (4 * seeds)).toBeGreaterThan(0.8);
    expect(markChi / seeds).toBeLessThan(1.3);
    expect(markChi / seeds).toBeGreaterThan(0.6);
  });

  it('does not care in which order the marks were written', () => {
    const marks = shotMarks([20, 40, 60, 80], 0.0005, normal(3));
    const [forth, back] = [calibrate(problem(marks)), calibrate(problem(marks.toReversed()))];
    for (const name of PARAMETERS) {
      const { value, sd } = estimateOf(forth, name);
      expect(Math.abs(value - estimateOf(back, name).value) / sd).toBeLessThan(
        1e-4 /* standard errors: the stopping test */,
      );
    }
  });

  it('a second mark, far from the first, takes a third off the error of the tape', () => {
    const rms = (marks: Parameters<typeof problem>[0]) =>
      Math.hypot(...uncertaintyOf(calibrate(problem(marks)), tape).map(({ onTargetSd }) => onTargetSd));
    const one = shotMarks([20], 0.0005);
    expect(rms(shotMarks([20, 60], 0.0005))).toBeLessThan((2 / 3) * rms(one));
  });

  it('works with twenty marks', () => {
    const marks = shotMarks(
      Array.from({ length: 20 }, (_, i) => 10 + 4 * i),
      0.0005,
      normal(5),
    );
    expect(calibrate(problem(marks)).residuals.length).toBe(20);
  });

  it('works with marks inside the near field, where settings turn back', () => {
    const peep = estimateOf(calibrate(problem(shotMarks([3, 5, 20, 50], 0.0003))), 'peep_height');
    expect(Math.abs(peep.value - truth.peep_height)).toBeLessThan(peep.sd);
    expect(peep.verdict).toBe('measured');
  });

  it('uses a drop and a speed down range', () => {
    const marks = shotMarks([20], 0.0005);
    const far = calibrate(
      problem([...marks, { kind: 'speed', range: si(yards(60)), speed: si(80), sd: si(0.3), day: null }]),
    );
    expect(estimateOf(far, 'drag_scale').sd).toBeLessThan(
      estimateOf(calibrate(problem(marks)), 'drag_scale').sd / 2,
    );
    const drop = {
      kind: 'drop',
      aimedWith: si<'m'>(yards(20)),
      range: si<'m'>(yards(40)),
      drop: si<'m'>(0.36),
      sd: si<'m'>(0.01),
      day: null,
    } as const;
    const [residual] = calibrate(problem([drop])).residuals;
    expect(Math.abs(residual?.residual ?? 1)).toBeLessThan(0.02 /* m: about the drop of this bow */);
  });

  it('names a mark shot at the wrong range as an outlier, and only that one', () => {
    const marks = shotMarks([20, 30, 40, 50, 60, 70, 80], 0.0005, normal(11));
    const wrong = marks.map((mark, i) =>
      i === 4 && mark.kind === 'mark' ? { ...mark, vertical: 0.35 } : mark,
    );
    const found = calibrate(problem(wrong));
    const outliers = findings(found).filter(({ kind }) => kind === 'outlier');
    expect(outliers).toHaveLength(1);
    expect(outliers[0]).toMatchObject({ index: 4 });
    expect(found.widening).toBeGreaterThan(1);
    expect(findings(calibrate(problem(marks))).filter(({ kind }) => kind === 'outlier')).toEqual([]);
  });

  it('calls speed and drag not separable when marks would measure either alone', () => {
    const loose = {
      ...priors,
      launch_speed: { value: inventedRig.launchSpeed, sd: 5 },
      drag_scale: { value: 1, sd: 0.6 },
    };
    const found = calibrate({ ...problem(shotMarks([20, 60], 0.0002)), priors: loose });
    expect(estimateOf(found, 'drag_scale').verdict).toBe('not separable');
    expect(estimateOf(found, 'drag_scale').tiedTo).toBe('launch_speed');
  });
});

describe('markUncertainty', () => {
  it('of a bow without marks is what a simulation over its priors gives, to 8 %', () => {
    const found = calibrate({ ...problem([]), priors: { ...priors, scale_offset: { value: 0, sd: 0.4 } } });
    const [sure] = uncertaintyOf(found, [yards(80)]);
    const random = normal(21);
    const draws = Array.from({ length: 600 }, () => {
      const values = namedValues(
        PARAMETERS.map(
          (name) => priors[name].value + (name === 'scale_offset' ? 0.4 : priors[name].sd) * random(),
        ),
      );
      return marksFor(withParameters(inventedRig, values), [yards(80)]).marks[0]?.reading ?? Number.NaN;
    });
    const mean = draws.reduce((a, b) => a + b, 0) / draws.length;
    const sd = Math.sqrt(draws.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (draws.length - 1));
    expect(Math.abs((sure?.readingSd ?? 0) / sd - 1)).toBeLessThan(0.08 /* relative: 600 draws give 3 % */);
  });
});

describe('nextRange', () => {
  const group = { sdAt: (range: number) => si<'m'>((0.0008 * range) / Math.sqrt(6)) };
  it('after a zero alone asks for a long shot, and tells what a fit with that shot then says', () => {
    const before = calibrate(problem(shotMarks([20], 0.0005)));
    const next = nextRange(before, tape, group);
    expect(next.range).toBeGreaterThan(yards(60));
    const sd = 0.0008 / Math.sqrt(6);
    const after = calibrate(
      problem([...shotMarks([20], 0.0005), ...shotMarks([Math.round(next.range / 0.9144)], sd)]),
    );
    const rms = (found: typeof after) =>
      Math.sqrt(
        uncertaintyOf(found, tape).reduce((sum, { onTargetSd }) => sum + onTargetSd ** 2, 0) / tape.length,
      );
    expect(Math.abs(rms(before) / next.rmsNow - 1)).toBeLessThan(
      1e-9 /* relative: the same numbers in another order */,
    );
    expect(Math.abs(rms(after) / next.rmsAfter - 1)).toBeLessThan(0.03 /* relative: the update is linear */);
  });
});

describe('guessScale', () => {
  it('finds pitch, place and way of an unknown scale from two readings, to 2 %', () => {
    const truthful = { ...inventedRig, scale: { travelPerUnit: 0.0005, direction: -1 as const, atZero: 40 } };
    const points = marksFor(truthful, [yards(20), yards(50)]).marks.map(({ range, reading }) => ({
      range,
      reading: reading ?? 0,
    }));
    const guess = guessScale({ ...inventedRig, scale: null }, -1, points);
    expect(Math.abs(guess.travelPerUnit / 0.0005 - 1)).toBeLessThan(
      1e-6 /* relative: two readings without error */,
    );
    expect(Math.abs(guess.atZero - 40)).toBeLessThan(1e-4 /* units */);
  });
  it('says when the readings run the other way', () => {
    expect(() =>
      guessScale(inventedRig, 1, [
        { range: yards(20), reading: 9 },
        { range: yards(50), reading: 3 },
      ]),
    ).toThrow(/grow/);
  });
});
