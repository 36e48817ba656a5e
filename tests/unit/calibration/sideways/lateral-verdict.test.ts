import { describe, expect, it } from 'vitest';
import { fitLateral, type LateralFit } from '../../../../src/calibration/sideways/lateral-fit.ts';
import { USUAL_PRIORS } from '../../../../src/calibration/sideways/lateral-mark.ts';
import {
  isAlike,
  lateralEstimates,
  leanSpinLikeness,
} from '../../../../src/calibration/sideways/lateral-verdict.ts';
import { spinningRig } from '../../advice/invented-bow.ts';
import { yards } from '../../sight/invented-rig.ts';
import { groupsOf } from './lateral-marks.ts';

/** A fit of two groups that would be moved by so much, with errors of 1 and 0.5. */
function fitOf(unknowns: LateralFit['unknowns'], slopes: readonly (readonly number[])[]): LateralFit {
  const fit = fitLateral(
    spinningRig,
    groupsOf(spinningRig, {}, [{ range: 20 }, { range: 40 }], () => 1),
  );
  const residuals = fit.residuals.map((residual, i) => ({
    ...residual,
    sd: i === 0 ? 1 : 0.5,
    slopes: slopes[i] ?? expect.fail(),
  }));
  return { ...fit, unknowns, residuals };
}

describe('how alike a lean and a spin look', () => {
  it('is the cosine between what they do to the groups, each over its error', () => {
    // (1, 2/0.5) and (2, -1/0.5): 2 - 8 = -6 over √17 √8.
    const expected = -6 / Math.sqrt(17 * 8);
    const likeness = leanSpinLikeness(
      fitOf(
        ['plumb', 'side_force'],
        [
          [1, 2],
          [2, -1],
        ],
      ),
    );
    expect(likeness).toBeCloseTo(expected, 12);
    expect(
      leanSpinLikeness(
        fitOf(
          ['side_force', 'plumb'],
          [
            [1, 2],
            [2, -1],
          ],
        ),
      ),
    ).toBeCloseTo(expected, 12);
  });
  it.each([
    [
      ['windage', 'plumb'],
      [1, 2],
      [2, -1],
    ],
    [
      ['side_force', 'offset'],
      [1, 2],
      [2, -1],
    ],
    [
      ['plumb', 'side_force'],
      [1, 0],
      [2, 0],
    ],
  ] as const)('is nothing of %j, where one of them takes no part, or does nothing', (unknowns, one, other) =>
    expect(leanSpinLikeness(fitOf(unknowns, [one, other]))).toBeNull(),
  );
  it('is one and the same from 0.99 on, to either side', () => {
    expect([0.991, -0.991, 1].map(isAlike)).toEqual([true, true, true]);
    expect([0.99, -0.99, 0, null].map(isAlike)).toEqual([false, false, false, false]);
  });
});

describe('what groups say of one cause', () => {
  /** An offset of 5 mm before; the group's own error is so many times that. */
  const offsetAt = (many: number) => {
    const marks = groupsOf(spinningRig, {}, [{ range: yards(30) }], () => many * 0.005);
    const estimates = lateralEstimates(fitLateral(spinningRig, marks, { ...USUAL_PRIORS, crosswindSd: 0 }));
    return estimates.find(({ name }) => name === 'offset') ?? expect.fail();
  };
  it('would be half as open alone by a group of 1/√3 of its error: 1/√(1 + 3); the windage hides it', () => {
    expect(offsetAt(0.99 / Math.sqrt(3))).toMatchObject({
      verdict: 'not separable',
      tiedTo: { name: 'windage' },
    });
    expect(offsetAt(1.01 / Math.sqrt(3))).toMatchObject({ verdict: 'mostly prior', tiedTo: null });
  });

  it('hangs together with another by their covariance over both errors', () => {
    const near = [8, 14, 20, 30, 45, 60, 80].map((range) => ({ range: yards(range) }));
    const fit = fitLateral(
      spinningRig,
      groupsOf(spinningRig, {}, near, (range) => 3e-4 * range),
      USUAL_PRIORS,
    );
    const found = lateralEstimates(fit);
    expect(found.some(({ verdict }) => verdict === 'measured')).toBe(true);
    expect(found.some(({ verdict }) => verdict === 'not separable')).toBe(true);
    for (const [i, { verdict, tiedTo }] of found.entries()) {
      const correlations = fit.unknowns.map((name, j) => {
        const [own, other] = [fit.covariance[i]?.[i], fit.covariance[j]?.[j]].map(Number);
        return {
          name,
          size: i === j ? 0 : Number(fit.covariance[i]?.[j]) / Math.sqrt(Number(own) * Number(other)),
        };
      });
      const [most] = correlations.toSorted((a, b) => Math.abs(b.size) - Math.abs(a.size));
      if (verdict !== 'not separable') expect(tiedTo).toBeNull();
      else expect(tiedTo?.name).toBe(most?.name);
      if (tiedTo !== null) expect(tiedTo.correlation).toBeCloseTo(most?.size ?? Number.NaN, 12);
    }
  });
});
