import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/calibration/fit.ts';
import { FIT_NOT_CONVERGED } from '../../../src/calibration/fit-not-converged.ts';
import { judgedFit } from '../../../src/calibration/judged-fit.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { at } from '../../../src/numerics/at.ts';
import { NumericalError } from '../../../src/numerics/numerical-error.ts';
import { yards } from '../sight/invented-rig.ts';
import { beyond, problem, shotMarks } from './invented-problem.ts';

const good = () => shotMarks([20, 30, 40, 60, 80], 0.0007);
const moved = (marks: readonly Measurement[], index: number, numbers: number): readonly Measurement[] =>
  marks.map((mark, i) =>
    i === index && mark.kind === 'mark' ? { ...mark, reading: mark.reading + numbers } : mark,
  );
const failureOf = (measurements: readonly Measurement[]): NumericalError => {
  try {
    judgedFit(problem(measurements));
  } catch (error) {
    if (error instanceof NumericalError) return error;
    throw error;
  }
  return expect.fail('a fit was found');
};

describe('judgedFit', () => {
  it('of measurements that agree is the fit of all', () => {
    const { calibration, disagreement } = judgedFit(problem(good()));
    expect(disagreement).toBeNull();
    expect(calibration.values).toEqual(calibrate(problem(good())).values);
  });

  it('of one that contradicts the others is the fit of those', () => {
    const { calibration, disagreement } = judgedFit(problem(moved(good(), 3, 5)));
    expect(disagreement?.isContradiction).toBe(true);
    const others = good().filter((_, i) => i !== 3);
    expect(calibration.problem.measurements).toEqual(others);
    expect(calibration.values).toEqual(calibrate(problem(others)).values);
  });

  it('of one that only stands out is the fit of all, with a word on that one', () => {
    // Three and a half standard errors: one of 2000 good groups, and one of 400 files of five.
    const marks = good().map((mark, i) =>
      mark.kind === 'mark' && i === 4 ? { ...mark, vertical: 3.9 * mark.sd } : mark,
    );
    const { calibration, disagreement } = judgedFit(problem(marks));
    expect(disagreement?.isContradiction).toBe(false);
    expect(disagreement?.explanations[0]?.explanation.kind).toBe('mark');
    expect(calibration.problem.measurements).toHaveLength(5);
  });

  it('of what nothing explains is the fit of all', () => {
    // Each of two cannot be told from the other, so neither is left out.
    const { calibration, disagreement } = judgedFit(problem(moved(good().slice(0, 2), 1, 6)));
    expect(disagreement?.isContradiction).toBe(true);
    expect(disagreement?.rest).toBeNull();
    expect(calibration.problem.measurements).toHaveLength(2);
  });

  describe('where no fit of all is found', () => {
    it('is the fit without the mark that no arrow gets to', () => {
      const marks = [...good().slice(0, 2), beyond(5000), ...good().slice(2)];
      const { calibration, disagreement } = judgedFit(problem(marks));
      expect(disagreement).toMatchObject({ isContradiction: true, agreement: null });
      expect(disagreement?.explanations.map(({ explanation }) => explanation.kind)).toEqual(['mark']);
      expect(calibration.values).toEqual(calibrate(problem(good())).values);
    });

    it('is an error that names the range of the first of them where two are out of reach', () => {
      const error = failureOf([...good(), beyond(5000), beyond(6000)]);
      expect(error.code).toBe('non-finite');
      expect(error.reason).toBe(FIT_NOT_CONVERGED);
      expect(error.at).toBe(5000);
    });
  });

  it('lets an error of the program itself through', () => {
    const broken: Measurement = {
      ...at(good(), 0),
      get range(): never {
        throw new RangeError('the program is wrong');
      },
    };
    expect(() => judgedFit(problem([broken]))).toThrow(new RangeError('the program is wrong'));
  });

  it('of far ranges keeps what an arrow gets to', () =>
    expect(judgedFit(problem(shotMarks([20, 100], 0.0007))).calibration.residuals[1]?.measurement.range).toBe(
      yards(100),
    ));
});
