import { describe, expect, it } from 'vitest';
import { leanFor } from '../../../../src/advice/lean/lean.ts';
import { leanVerdict } from '../../../../src/advice/lean/lean-verdict.ts';
import { windFrom } from '../../../../src/atmosphere/wind.ts';
import { fitLateral as fitWith } from '../../../../src/calibration/sideways/lateral-fit.ts';
import { type LateralMark, USUAL_PRIORS } from '../../../../src/calibration/sideways/lateral-mark.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { groupsOf } from '../../calibration/sideways/lateral-marks.ts';
import { inventedRig } from '../../sight/invented-rig.ts';
import { courseRanges, degrees, inches, mirrored, spinningRig, withArrow } from '../invented-bow.ts';

/** In air that is known to be still; the wind's part is in crosswind.test.ts. */
const fitLateral = (rig: Rig, marks: readonly LateralMark[]) =>
  fitWith(rig, marks, { ...USUAL_PRIORS, crosswindSd: 0 });

/** 0.03 in per yard of range. */
const USUAL_SPREAD = 8.33e-4;
const course = courseRanges.map((range) => ({ range }));
const unmeasured = fitLateral(spinningRig, []);
const ceiling = withArrow(spinningRig, { sideForce: 1 });

describe('leanFor', () => {
  const lean = leanFor(spinningRig, unmeasured, courseRanges);

  it('a right helical asks for a clockwise lean, and a left one for the same the other way', () => {
    expect(lean.lean).toBeGreaterThan(0);
    const left = leanFor(mirrored(spinningRig), fitLateral(mirrored(spinningRig), []), courseRanges);
    expect(left.lean).toBe(-lean.lean);
  });

  it('is 0.008 deg for a common arrow, and 0.2 deg at the ceiling of the shaft force', () => {
    expect(Math.abs(lean.lean / degrees(0.008) - 1)).toBeLessThan(0.1 /* relative: the print */);
    const { lean: most } = leanFor(ceiling, fitLateral(ceiling, []), courseRanges);
    expect(most).toBeGreaterThan(degrees(0.19));
    expect(most).toBeLessThan(degrees(0.26));
  });

  it('of the bow it is the closed form to 3 %: the spin takes its first metres to settle', () => {
    expect(Math.abs(lean.bowLean / (lean.closedForm?.gyroscopic ?? 1) - 1)).toBeLessThan(
      0.03 /* of the lean */,
    );
    const both = leanFor(ceiling, fitLateral(ceiling, []), courseRanges);
    const closed = (both.closedForm?.gyroscopic ?? 0) + (both.closedForm?.shaftForceCeiling ?? 0);
    expect(Math.abs(both.bowLean / closed - 1)).toBeLessThan(0.03 /* of the lean */);
  });

  it('of the travel it is a little more than of the bow: the pin starts from the eye, not from the arrow', () => {
    // Travel tilted by t gives t (D + h - (x/x0)(D0 + h)), the bow t (D - (x/x0) D0): at 100 yd from 20, 9 % less.
    expect(lean.lean / lean.bowLean).toBeGreaterThan(1.06);
    expect(lean.lean / lean.bowLean).toBeLessThan(1.15);
  });

  it('leaves 1 to 2 % of the largest drift over 20 to 100 yd', () => {
    const both = leanFor(ceiling, fitLateral(ceiling, []), courseRanges);
    const largest = Math.max(...both.now.map(Math.abs));
    expect(both.residualMax).toBeLessThan(0.02 * largest);
  });

  it('what is left is what the marks of a bow so leaned say', () => {
    const leaned = { ...spinningRig, geometry: { ...spinningRig.geometry, lean: lean.lean } };
    for (const [i, mark] of marksFor(leaned, courseRanges).marks.entries())
      expect(mark.lateral).toBe(lean.left[i]);
  });

  it('makes up for a bow that is held over', () => {
    const held = { ...inventedRig, cant: si<'rad'>(degrees(2)) };
    const { bowLean, lean: travel } = leanFor(held, fitLateral(held, []), courseRanges);
    expect(Math.abs(bowLean + degrees(2))).toBeLessThan(1e-8 /* rad */);
    expect(travel).toBeLessThan(0);
  });

  it('counts from how the travel leans already', () => {
    const set = { ...spinningRig, geometry: { ...spinningRig.geometry, lean: lean.lean } };
    const again = leanFor(set, unmeasured, courseRanges);
    expect(Math.abs(again.turn)).toBeLessThan(1e-8 /* rad */);
    expect(Math.abs(again.lean - lean.lean)).toBeLessThan(1e-8 /* rad */);
  });

  it("leaves today's wind alone", () => {
    const windy = {
      ...spinningRig,
      conditions: { ...spinningRig.conditions, wind: windFrom(si(5), si(Math.PI / 2)) },
    };
    expect(leanFor(windy, unmeasured, courseRanges).lean).toBe(lean.lean);
  });

  it('has nothing to do for an arrow that does not spin', () => {
    const none = leanFor(inventedRig, fitLateral(inventedRig, []), courseRanges);
    expect(Math.abs(none.lean)).toBeLessThan(1e-9 /* rad */);
    expect(none.closedForm).toBeNull();
  });

  it('turns a measured curve back, as sure as the groups make it', () => {
    const sharp = groupsOf(spinningRig, { plumb: degrees(1), windage: 0.002 }, course, () => 1e-4);
    const found = leanFor(spinningRig, fitLateral(spinningRig, sharp), courseRanges);
    expect(Math.abs(found.bowLean / degrees(-1) - 1)).toBeLessThan(
      0.02 /* relative: what the linear curve leaves of a degree */,
    );
    expect(found.sd).toBeLessThan(degrees(0.05));
    const blunt = groupsOf(spinningRig, { plumb: degrees(1) }, course, (range) => USUAL_SPREAD * range);
    expect(leanFor(spinningRig, fitLateral(spinningRig, blunt), courseRanges).sd).toBeGreaterThan(
      4 * found.sd,
    );
  });
});

describe('leanVerdict', () => {
  const verdictFor = (
    rig: typeof spinningRig,
    marks: ReturnType<typeof groupsOf> = [],
    spread = USUAL_SPREAD,
  ) => {
    const fit = fitLateral(rig, marks);
    return leanVerdict(leanFor(rig, fit, courseRanges), fit, courseRanges, spread);
  };

  it('advises no lean for the gyroscopic drift of an ordinary arrow, and says how many arrows would show it', () => {
    const verdict = verdictFor(spinningRig);
    expect(verdict).toMatchObject({ worthDoing: false, reason: 'inside the groups', measured: false });
    expect(verdict.toShow?.arrows).toBeGreaterThan(10_000);
    expect(verdict.toShow?.range).toBe(courseRanges.at(-1));
  });

  it('nor for the shaft force at its ceiling', () =>
    expect(verdictFor(ceiling).reason).toBe('inside the groups'));

  it('advises one for a curve that many arrows have shown', () => {
    const marks = groupsOf(spinningRig, { plumb: degrees(1) }, course, (range) => (USUAL_SPREAD * range) / 5);
    const verdict = verdictFor(spinningRig, marks);
    expect(verdict).toMatchObject({ worthDoing: true, reason: 'worth doing', measured: true });
    expect(verdict.shift).toBeGreaterThan(inches(2));
  });

  it('but not for one that three arrows at two ranges hint at', () => {
    const two = [course[0], course.at(-1)].flatMap((shot) => (shot === undefined ? [] : [shot]));
    const marks = groupsOf(
      spinningRig,
      { plumb: degrees(1.5) },
      two,
      (range) => (USUAL_SPREAD * range) / 1.7,
    );
    expect(verdictFor(spinningRig, marks)).toMatchObject({ worthDoing: false, reason: 'not shown' });
  });

  it('the arrows it asks for would show the shift to two standard errors', () => {
    const verdict = verdictFor(ceiling);
    const arrows = verdict.toShow?.arrows ?? 0;
    const error = (n: number) => USUAL_SPREAD * verdict.at * Math.sqrt(2 / n);
    expect(2 * error(arrows)).toBeLessThanOrEqual(Math.abs(verdict.shift));
    expect(2 * error(arrows - 1)).toBeGreaterThan(Math.abs(verdict.shift));
  });

  it('a steadier archer sees more', () =>
    expect(verdictFor(ceiling, [], USUAL_SPREAD / 4).reason).toBe('not shown'));
});
