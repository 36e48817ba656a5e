import { describe, expect, it } from 'vitest';
import { studentised } from '../../../src/calibration/judged-residuals.ts';
import { at } from '../../../src/numerics/at.ts';

describe('studentised residuals, by hand', () => {
  it('of independent errors are r / (s sqrt(1 - h))', () => {
    // One unknown measured twice, with errors of 2 and 4; residuals of 4 and -4, both whitened by their errors. The covariance of
    // the unknown is 1/(1/4 + 1/16) = 3.2, so the leverages are 3.2/4 = 0.8 and 3.2/16 = 0.2.
    const found = studentised({
      factor: [
        [2, 0],
        [0, 4],
      ],
      jacobian: [[0.5], [0.25]],
      residuals: [2, -1],
      covariance: [[3.2]],
    });
    expect(at(found, 0)).toBeCloseTo(2 / Math.sqrt(0.2), 12);
    expect(at(found, 1)).toBeCloseTo(-1 / Math.sqrt(0.8), 12);
  });

  it('of errors that go together are judged by what the others say of each', () => {
    // V = [1 1/2; 1/2 1] has the inverse 4/3 [1 -1/2; -1/2 1] and the factor [1 0; 1/2 sqrt(3)/2]. Nothing is fitted, and the
    // residuals are 1 and 0: V^-1 r = [4/3, -2/3], each over the root of 4/3.
    const found = studentised({
      factor: [
        [1, 0],
        [0.5, Math.sqrt(3) / 2],
      ],
      jacobian: [[], []],
      residuals: [1, -0.5 / (Math.sqrt(3) / 2)],
      covariance: [],
    });
    expect(at(found, 0)).toBeCloseTo(4 / 3 / Math.sqrt(4 / 3), 12);
    expect(at(found, 1)).toBeCloseTo(-2 / 3 / Math.sqrt(4 / 3), 12);
  });

  it('of a measurement that alone fixes an unknown are 0: nothing speaks against it', () =>
    expect(studentised({ factor: [[1]], jacobian: [[1]], residuals: [0], covariance: [[1]] })).toEqual([0]));
});
