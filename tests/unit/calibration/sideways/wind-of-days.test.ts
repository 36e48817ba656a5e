import { describe, expect, it } from 'vitest';
import { curvedPart } from '../../../../src/calibration/sideways/curved-part.ts';
import { fitLateral } from '../../../../src/calibration/sideways/lateral-fit.ts';
import {
  type LateralMark,
  type LateralPriors,
  USUAL_PRIORS,
} from '../../../../src/calibration/sideways/lateral-mark.ts';
import { LATERAL_CAUSES, predictLateral } from '../../../../src/calibration/sideways/lateral-model.ts';
import { lateralEstimates } from '../../../../src/calibration/sideways/lateral-verdict.ts';
import { launchSwing } from '../../../../src/calibration/sideways/launch-swing.ts';
import { at } from '../../../../src/numerics/at.ts';
import { inverseSymmetric, times } from '../../../../src/numerics/linear-algebra.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { degrees, spinningRig } from '../../advice/invented-bow.ts';
import { yards } from '../../sight/invented-rig.ts';
import { groupsOf } from './lateral-marks.ts';
import { mixedModel } from './mixed-model.ts';

const near = [8, 14, 20, 30, 45, 60, 80].map((range) => ({ range: yards(range) }));
const twelve = (range: number) => (8.33e-4 * range) / Math.sqrt(12);
const truth = { windage: 0.001, offset: 0.002, plumb: degrees(0.6), sideForce: 0.3 };
/** Two evenings, groups off by a few tenths of their standard uncertainties times `off`. */
const evenings = (off: number): readonly LateralMark[] =>
  ['first', 'second'].flatMap((day, evening) =>
    groupsOf(spinningRig, truth, near, twelve).map((mark, i) => ({
      ...mark,
      day,
      cantSd: si<'rad'>(degrees(0.1)),
      lateral: mark.lateral + off * mark.sd * (((i * 5 + evening * 3) % 7) - 3 + (2 * evening - 1)),
    })),
  );
/** Priors that all say something, of values that are none of them 0. */
const priors: LateralPriors = {
  ...USUAL_PRIORS,
  windage: { value: 0.0004, sd: 0.002 },
  offset: { value: 0.001, sd: 0.003 },
  plumb: { value: degrees(0.2), sd: degrees(0.5) },
  side_force: { value: 0.1, sd: 0.3 },
  tail_left: { value: degrees(0.3), sd: degrees(1.5) },
  turning: { value: 0.002, sd: 0.012 },
  crosswindSd: 0.6,
};
/** Of itself: two ways to the same numbers, through matrices of condition 1e6 or so. */
const SAME = 1e-7;
const same = (found: number, expected: number): void =>
  expect(Math.abs(found - expected)).toBeLessThan(SAME * Math.abs(expected));

describe.each([
  ['that agree', 0.3, 'not asked for'],
  ['that scatter more than they say', 1.2, 'does not help'],
] as const)('groups of two evenings %s', (_, off, kind) => {
  const fitted = () => fitLateral(spinningRig, evenings(off), priors);
  const mixed = () => mixedModel(evenings(off), priors, false);

  it('are fitted as if the wind of each evening were an unknown of its own', () => {
    const [fit, other] = [fitted(), mixed()];
    expect(fit.launch.kind).toBe(kind);
    expect(fit.unknowns).toEqual(LATERAL_CAUSES);
    for (const [j] of LATERAL_CAUSES.entries()) {
      same(at(fit.values, j), at(other.values, j));
      for (const [k] of LATERAL_CAUSES.entries())
        same(at(at(fit.covariance, j), k), at(at(other.covariance, j), k) * fit.widening ** 2);
    }
    same(fit.chiSquared, other.chiSquared);
  });

  it('say of the wind of each evening what that unknown does, its error wider where they scatter', () => {
    const [fit, other] = [fitted(), mixed()];
    expect(fit.crosswinds.map(({ day }) => day)).toEqual(['first', 'second']);
    for (const [d, { value, sd, priorSd }] of fit.crosswinds.entries()) {
      const place = LATERAL_CAUSES.length + d;
      same(value, at(other.values, place));
      same(sd, Math.sqrt(at(at(other.covariance, place), place)) * fit.widening);
      expect(priorSd).toBe(0.6);
    }
  });

  it('leave of each what all of that leaves', () => {
    const [fit, other] = [fitted(), mixed()];
    for (const [i, { residual, sd, slopes }] of fit.residuals.entries()) {
      expect(slopes).toHaveLength(4);
      expect(Math.abs(residual - at(other.left, i))).toBeLessThan(1e-9 /* m */);
      same(sd, at(other.sds, i));
    }
  });

  it('show as curved what no windage, offset or wind takes out: the curved part, and what is left', () => {
    const fit = fitted();
    for (const { mark, curved, residual } of fit.residuals) {
      const [{ lateral } = expect.fail()] = curvedPart(spinningRig, fit, [mark.range]);
      expect(Math.abs(curved - residual - lateral)).toBeLessThan(1e-9 /* m */);
    }
  });

  it('know a cause by its error before and after, the widening taken off', () => {
    const [fit, other] = [fitted(), mixed()];
    for (const [j, { sd, priorSd, priorValue, verdict }] of lateralEstimates(fit).entries()) {
      const prior = at(other.before, j);
      expect([priorValue, priorSd]).toEqual([prior.value, prior.sd]);
      const left = Math.sqrt(at(at(other.covariance, j), j)) / prior.sd;
      const alone = 1 / Math.sqrt(at(at(other.normal, j), j)) / prior.sd;
      // Half of what was open is the border.
      const judged = alone <= 0.5 ? 'not separable' : 'mostly prior';
      expect(verdict).toBe(left <= 0.5 ? 'measured' : judged);
      same(sd, left * prior.sd * fit.widening);
    }
  });
});

describe('a swing at the start', () => {
  it('that does not help has the chance of F with 2 and n - 2, where the scatter is large', () => {
    const marks = evenings(1.2);
    const fit = fitLateral(spinningRig, marks, priors);
    const [before, after] = [false, true].map((is) => mixedModel(marks, priors, is).chiSquared);
    if (fit.launch.kind !== 'does not help' || before === undefined || after === undefined) expect.fail();
    const byScatter = (after / before) ** ((marks.length - 2) / 2);
    expect(byScatter).toBeGreaterThan(Math.exp((after - before) / 2));
    same(fit.launch.chance, byScatter);
  });

  it('that is seen has the chance of chi-squared with 2 degrees of freedom, where what is left is small', () => {
    const swing = launchSwing(spinningRig);
    const open = { ...priors, turning: { value: 0, sd: 0.1 } };
    const marks = evenings(0.05).map((mark) => ({
      ...mark,
      lateral: mark.lateral + 0.018 * swing.turning(mark.range - spinningRig.geometry.freeFlight),
    }));
    const fit = fitLateral(spinningRig, marks, open);
    const plain = mixedModel(marks, open, false);
    const other = mixedModel(marks, open, true);
    if (fit.launch.kind !== 'seen') expect.fail();
    const byGroups = Math.exp((other.chiSquared - plain.chiSquared) / 2);
    const byScatter = (other.chiSquared / plain.chiSquared) ** ((marks.length - 2) / 2);
    expect(byGroups).toBeGreaterThan(byScatter);
    same(fit.launch.chance, byGroups);
    for (const [j, name] of fit.unknowns.entries()) {
      expect(name).toBe(at(other.unknowns, j));
      same(at(fit.values, j), at(other.values, j));
    }
    // Its two shapes are no curve of the air's: they go with the windage.
    for (const { mark, curved, residual } of fit.residuals) {
      const [{ lateral } = expect.fail()] = curvedPart(spinningRig, fit, [mark.range]);
      expect(Math.abs(curved - residual - lateral)).toBeLessThan(1e-9 /* m */);
    }
  });

  it('turns with the bow: its shapes are as long as the bow stands upright', () => {
    const swing = launchSwing(spinningRig);
    const held = { ...spinningRig, cant: si<'rad'>(degrees(30)) };
    const upright = near.map(({ range }) => ({ range, cant: -degrees(30) }));
    const marks = groupsOf(held, {}, upright, twelve).map((mark) => ({
      ...mark,
      lateral: mark.lateral + 0.02 * swing.turning(mark.range - held.geometry.freeFlight),
    }));
    const fit = fitLateral(held, marks, { ...USUAL_PRIORS, crosswindSd: 0 });
    expect(fit.launch.kind).toBe('seen');
    for (const { mark, slopes } of fit.residuals) {
      const flown = mark.range - held.geometry.freeFlight;
      expect(at(slopes, 4)).toBeCloseTo(swing.tailLeft(flown), 12 /* m per rad, rounding */);
      expect(at(slopes, 5)).toBeCloseTo(swing.turning(flown), 12 /* m */);
    }
  });

  it('is not found by as many groups as it has shapes: they fit any', () => {
    const [first, second] = groupsOf(spinningRig, {}, near.slice(2, 4), twelve);
    if (first === undefined || second === undefined) expect.fail();
    const far = [
      { ...first, lateral: 1 },
      { ...second, lateral: -1 },
    ];
    expect(fitLateral(spinningRig, far, priors).launch).toEqual({ kind: 'does not help', chance: 1 });
    expect(fitLateral(spinningRig, far.slice(0, 1), priors).launch).toEqual({
      kind: 'does not help',
      chance: 1,
    });
  });

  it('of a usual size could be seen where it would drop chi-squared by 9.21, the 1 % point of two degrees of freedom', () => {
    const still = { ...priors, crosswindSd: 0 };
    const at30 = (times: number) => groupsOf(spinningRig, {}, near, (range) => times * twelve(range));
    /** The drop by the better of the two shapes: what the groups say of it, all else but the priors unknown. */
    const dropOf = (times: number): number => {
      const { normal, before, unknowns } = mixedModel(at30(times), { ...still, crosswindSd: 1e-9 }, true);
      const drops = (['tail_left', 'turning'] as const).map((name) => {
        const j = unknowns.indexOf(name);
        const { sd } = at(before, j);
        const others = LATERAL_CAUSES.map((_, k) => k);
        const inner = inverseSymmetric(others.map((a) => others.map((b) => at(at(normal, a), b))));
        const along = others.map((k) => at(at(normal, j), k));
        const lost = times3(along, inner);
        return (at(at(normal, j), j) - 1 / sd ** 2 - lost) * sd ** 2;
      });
      return Math.max(...drops);
    };
    let [lo, hi] = [0.05, 20];
    for (let i = 0; i < 20; i++) {
      const middle = Math.sqrt(lo * hi);
      if (dropOf(middle) > 9.21034) lo = middle;
      else hi = middle;
    }
    const kindAt = (times: number) => fitLateral(spinningRig, at30(times), still).launch.kind;
    expect(kindAt(0.99 * lo)).toBe('not asked for');
    expect(kindAt(1.01 * lo)).toBe('not to be seen');
  });
});

const times3 = (v: readonly number[], A: readonly (readonly number[])[]): number =>
  times(A, v).reduce((sum, value, i) => sum + value * at(v, i), 0);

describe('the wind of a day', () => {
  it('is not estimated where the wind is known', () =>
    expect(fitLateral(spinningRig, evenings(0.3), { ...priors, crosswindSd: 0 }).crosswinds).toEqual([]));

  it('of groups that name no day is that of the farthest, in whatever order they stand', () => {
    // The widest gap is that to the far ones, so that the near ones may be of another evening.
    const list = [80, 70, 20, 25].map((range) => ({ range: yards(range) }));
    const marks = groupsOf(spinningRig, truth, list, twelve).map((mark, i) => ({
      ...mark,
      lateral: mark.lateral + (i % 3) * mark.sd,
    }));
    const named = marks.map((mark) => ({ ...mark, day: mark.range > yards(50) ? 'far' : 'near' }));
    const still = { ...priors, crosswindSd: 0.6 };
    const [only, ...others] = fitLateral(spinningRig, marks, still).crosswinds;
    expect(others).toEqual([]);
    const far = fitLateral(spinningRig, named, still).crosswinds.find(({ day }) => day === 'far');
    expect(only).toEqual({ ...far, day: null });
  });

  describe('is judged by what the groups of that day would say alone', () => {
    // A wind of 0.3 m/s before; the group's own error is so many times what that wind does to it.
    const verdictAt = (many: number): string | undefined => {
      const [mark] = groupsOf(spinningRig, {}, [{ range: yards(60) }], twelve);
      if (mark === undefined) expect.fail();
      const [{ perCrosswind } = expect.fail()] = predictLateral(spinningRig, [mark]);
      const one = { ...mark, sd: si<'m'>(many * 0.3 * Math.abs(perCrosswind)) };
      return fitLateral(spinningRig, [one], { ...USUAL_PRIORS, crosswindSd: 0.3 }).crosswinds[0]?.verdict;
    };
    // 1/√(1 + 1/m²) of what was open would be left, which is a half at m = 1/√3; the windage is open too.
    it('to less than half of what was open: the windage hides it', () =>
      expect(verdictAt(0.99 / Math.sqrt(3))).toBe('not separable'));
    it('to more than half: it is as open as before', () =>
      expect(verdictAt(1.01 / Math.sqrt(3))).toBe('mostly prior'));
    it('is measured where all else is known', () => {
      const marks = groupsOf(spinningRig, {}, near, (range) => 1e-4 * range);
      const known = { value: 0, sd: 1e-6 };
      const sure = { ...USUAL_PRIORS, windage: known, offset: known, plumb: known, side_force: known };
      const [wind] = fitLateral(
        spinningRig,
        marks.map((mark) => ({ ...mark, day: 'a' })),
        {
          ...sure,
          crosswindSd: 3,
        },
      ).crosswinds;
      expect(wind?.verdict).toBe('measured');
    });
  });
});
