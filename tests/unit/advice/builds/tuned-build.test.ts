import { describe, expect, it } from 'vitest';
import { combined, covariance, standardError } from '../../../../src/advice/builds/error-form.ts';
import { type TunedBuild, tunedBuilds } from '../../../../src/advice/builds/tuned-build.ts';
import { launchSpeed } from '../../../../src/bow/energy.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { shotMarks } from '../../calibration/invented-problem.ts';
import { baseArrow, bowWith, candidate, grains, tallVanes, withPoint } from '../invented-candidates.ts';

const pair = (builds: readonly TunedBuild[]): [TunedBuild, TunedBuild] => {
  const [base, other] = builds;
  return base === undefined || other === undefined ? expect.fail('two builds') : [base, other];
};
const difference = (of: 'speed' | 'drag' | 'peep', [a, b]: readonly [TunedBuild, TunedBuild]): number =>
  standardError(
    combined([
      [1, b.errors[of]],
      [-1, a.errors[of]],
    ]),
  );
const heavier = candidate('heavier point', withPoint(175));

describe('without marks', () => {
  const builds = pair(tunedBuilds(bowWith([heavier])));
  const [base, other] = builds;

  it('the base flies as measured, its errors are the priors', () => {
    expect(base.rig.launchSpeed).toBe(85.344);
    expect(base.speedFrom).toBe('chronographed');
    expect(Math.abs(standardError(base.errors.speed) - 0.4572)).toBeLessThan(1e-9 /* m/s */);
    expect(Math.abs(standardError(base.errors.drag) - 0.15)).toBeLessThan(1e-9 /* of 1 */);
    expect(Math.abs(standardError(base.errors.peep) - 0.00254)).toBeLessThan(1e-12 /* m */);
  });
  it('speed and its error are those of the bow energy', () => {
    const { value, sd } = launchSpeed(other.energy, other.arrow.flying.mass);
    expect(other.speedFrom).toBe('bow energy');
    expect(Math.abs(other.rig.launchSpeed - value)).toBeLessThan(1e-9 /* m/s */);
    expect(Math.abs(standardError(other.errors.speed) / sd - 1)).toBeLessThan(1e-6 /* relative */);
  });
  it('the chronograph cancels in the difference: what is left is the virtual mass, by hand', () => {
    // d(v - v0)/d ln K with v0 held, and the small part of the chronograph that scales: (ratio - 1) x 0.4572.
    const K = other.energy.virtualMass;
    const m = baseArrow.flying.mass + K;
    const ratio = Math.sqrt(m / (m + grains(50)));
    const byMass = (85.344 * ratio * K * (1 / m - 1 / (m + grains(50)))) / 2;
    const hand = Math.hypot(byMass * 0.45, (ratio - 1) * 0.4572);
    expect(Math.abs(difference('speed', builds) / hand - 1)).toBeLessThan(1e-6 /* relative */);
    expect(hand).toBeLessThan(0.6 * 0.4572);
  });
  it('a mass that nobody weighed moves the speed that the energy of the bow gives it, by hand', () => {
    const [, vague] = pair(tunedBuilds(bowWith([{ ...heavier, massSd: grains(4) }])));
    const K = vague.energy.virtualMass;
    const m = baseArrow.flying.mass + grains(50);
    const ofMass = (of: 'speed' | 'mass') => vague.errors[of].get('mass:heavier point') ?? Number.NaN;
    // v = sqrt(2E/(m + K)): dv/dm = -v/2(m + K).
    const hand = (-vague.rig.launchSpeed * grains(4)) / (2 * (m + K));
    expect(Math.abs(ofMass('speed') / hand - 1)).toBeLessThan(1e-9 /* relative */);
    expect(ofMass('mass')).toBe(grains(4));
    expect(other.errors.mass.size).toBe(0);
  });
  it('drag of one shape errs alike, and so does the peep', () => {
    expect(difference('drag', builds)).toBeLessThan(1e-12);
    expect(difference('peep', builds)).toBe(0);
  });
  it('other vanes leave a small error in the difference of drag, far below the whole', () => {
    const other = pair(tunedBuilds(bowWith([candidate('tall vanes', tallVanes)])));
    expect(difference('drag', other)).toBeGreaterThan(0.001);
    expect(difference('drag', other)).toBeLessThan(0.03);
  });
});

describe('with marks', () => {
  const marks = shotMarks([20, 40, 60, 80, 100], 4e-4);
  const bow = bowWith([heavier, candidate('tall vanes', tallVanes)], marks);
  const [base, same, tall] = tunedBuilds(bow);
  const [b, s, t] = [base ?? expect.fail(), same ?? expect.fail(), tall ?? expect.fail()];

  it('the errors of the base are those of the calibration, correlations too', () => {
    const C = bow.calibration.covariance;
    const { speed, drag, peep } = b.errors;
    for (const [i, a] of [speed, drag, peep].entries())
      for (const [j, c] of [speed, drag, peep].entries())
        expect(Math.abs(covariance(a, c) / (C[i]?.[j] ?? 0) - 1)).toBeLessThan(1e-6 /* relative */);
  });
  it('a build of the same shape takes the calibrated drag over', () => {
    expect(Math.abs(s.rig.conditions.arrow.dragScale - bow.calibration.values.drag_scale)).toBeLessThan(
      1e-12 /* relative, rounding */,
    );
    expect(Math.abs(standardError(s.errors.drag) - standardError(b.errors.drag))).toBeLessThan(
      1e-12 /* relative, rounding */,
    );
  });
  it('a build of another shape takes most of it over, and errs mostly but not wholly with the base', () => {
    const share = (t.rig.conditions.arrow.dragScale - 1) / (bow.calibration.values.drag_scale - 1);
    expect(share).toBeGreaterThan(0.8);
    expect(share).toBeLessThan(1.1);
    const [own, common] = [standardError(t.errors.drag), standardError(b.errors.drag)];
    expect(own).toBeLessThan(0.15);
    const correlation = covariance(t.errors.drag, b.errors.drag) / own / common;
    expect(correlation).toBeGreaterThan(0.9);
    expect(correlation).toBeLessThan(0.9999);
  });
  it('speed of the others follows the calibrated speed of the base', () => {
    expect(b.speedFrom).toBe('calibrated');
    const ratio = Math.sqrt(
      (b.arrow.flying.mass + b.energy.virtualMass) / (s.arrow.flying.mass + b.energy.virtualMass),
    );
    expect(Math.abs(s.rig.launchSpeed / b.rig.launchSpeed - ratio)).toBeLessThan(
      1e-12 /* relative, rounding */,
    );
  });
});

describe('a candidate that was chronographed', () => {
  const speed = { value: si<'m/s'>(81.6), sd: si<'m/s'>(0.2) };
  const [, other, third] = tunedBuilds(
    bowWith([candidate('measured', withPoint(175), { speed }), candidate('bought next', withPoint(225))]),
  );

  it('keeps its own speed and error', () => {
    expect(other?.speedFrom).toBe('chronographed');
    expect(other?.rig.launchSpeed).toBe(81.6);
    expect(Math.abs(standardError(other?.errors.speed ?? new Map()) - 0.2)).toBeLessThan(
      1e-12 /* m/s, rounding */,
    );
  });
  it('helps to tell the virtual mass, and errs with the arrows predicted from it', () => {
    expect(third?.energy.arrows.length).toBe(2);
    expect(covariance(other?.errors.speed ?? new Map(), third?.errors.speed ?? new Map())).not.toBe(0);
    const alone = tunedBuilds(bowWith([candidate('bought next', withPoint(225))]))[1];
    expect(Math.abs(standardError(third?.errors.speed ?? new Map()))).not.toBe(
      standardError(alone?.errors.speed ?? new Map()),
    );
  });
});
