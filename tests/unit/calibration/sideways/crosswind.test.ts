import { describe, expect, it } from 'vitest';
import { leanFor } from '../../../../src/advice/lean/lean.ts';
import { leanVerdict } from '../../../../src/advice/lean/lean-verdict.ts';
import { fitLateral } from '../../../../src/calibration/sideways/lateral-fit.ts';
import { type LateralPriors, USUAL_PRIORS } from '../../../../src/calibration/sideways/lateral-mark.ts';
import { MILE_PER_HOUR } from '../../../../src/quantities/exact.ts';
import { lateralPriors } from '../../../../src/setup/assemble/sideways-marks.ts';
import { readSetup } from '../../../../src/setup/read.ts';
import { courseRanges, degrees, spinningRig } from '../../advice/invented-bow.ts';
import { EXAMPLE } from '../../setup/example-text.ts';
import { inWind } from './invented-winds.ts';
import { causeOf, groupsOf } from './lateral-marks.ts';

const SPREAD = 8.33e-4;
const course = courseRanges.map((range) => ({ range }));
/** Twelve arrows of a good archer. */
const twelve = (range: number) => (SPREAD * range) / Math.sqrt(12);
const inAWind = (mph: number) => groupsOf(inWind(mph), {}, course, twelve);
const fitted = (marks: ReturnType<typeof groupsOf>, priors: LateralPriors = USUAL_PRIORS) => {
  const fit = fitLateral(spinningRig, marks, priors);
  const lean = leanFor(spinningRig, fit, courseRanges);
  return { fit, lean, verdict: leanVerdict(lean, fit, courseRanges, SPREAD) };
};
const plumbSd = ({ fit }: ReturnType<typeof fitted>) => Math.sqrt(fit.covariance[2]?.[2] ?? Number.NaN);
const STILL = { ...USUAL_PRIORS, crosswindSd: 0 };

describe('groups shot in a steady crosswind that nobody wrote down', () => {
  it('would be taken for a lean of more than a degree if the air were known to be still', () => {
    const { fit, verdict } = fitted(inAWind(6), STILL);
    expect(Math.abs(causeOf(fit, 'plumb'))).toBeGreaterThan(degrees(1));
    expect(verdict.reason).toBe('worth doing');
  });

  it('are not, when it is not: the lean is not shown, and a wind is named that does the same', () => {
    const found = fitted(inAWind(6));
    expect(found.verdict).toMatchObject({ worthDoing: false, reason: 'not shown' });
    expect(Math.abs(causeOf(found.fit, 'plumb')) / plumbSd(found)).toBeLessThan(1.6 /* standard errors */);
    // The lean that is left in the fit is what about half of the wind would do.
    expect(found.lean.windAlike).toBeGreaterThan(2 * MILE_PER_HOUR);
    expect(found.lean.windAlike).toBeLessThan(6 * MILE_PER_HOUR);
    expect(found.verdict.couldBeWind).toBe(true);
    const [wind] = found.fit.crosswinds;
    expect(wind?.day).toBeNull();
    expect(wind?.value).toBeGreaterThan(MILE_PER_HOUR);
    expect(wind?.verdict).toBe('not separable');
  });

  it('from the other side are the mirror', () => {
    const [right, left] = [fitted(inAWind(4)), fitted(inAWind(-4))];
    const sum = (right.fit.crosswinds[0]?.value ?? 1) + (left.fit.crosswinds[0]?.value ?? 1);
    expect(Math.abs(sum)).toBeLessThan(0.02 /* m/s: the arrow spins to one side */);
  });
});

describe('what separates a wind from a lean', () => {
  const leaning = groupsOf(spinningRig, { plumb: degrees(1.5) }, course, twelve);

  it('still air, written down', () => {
    const still = fitted(leaning, { ...USUAL_PRIORS, crosswindSd: 0.2 * MILE_PER_HOUR });
    expect(still.verdict.worthDoing).toBe(true);
    expect(fitted(leaning).verdict.worthDoing).toBe(false);
  });

  it('a plumb line: a travel measured to a quarter of a degree is believed, and the wind takes the curve', () => {
    const plumbed = { ...USUAL_PRIORS, plumb: { value: 0, sd: degrees(0.25) } };
    const { fit, verdict } = fitted(inAWind(4), plumbed);
    expect(Math.abs(causeOf(fit, 'plumb'))).toBeLessThan(degrees(0.5));
    expect(verdict.worthDoing).toBe(false);
    const [wind] = fit.crosswinds;
    expect(Math.abs((wind?.value ?? 0) - 4 * MILE_PER_HOUR)).toBeLessThan(2 * (wind?.sd ?? 0));
    expect(wind?.value).toBeGreaterThan(2 * MILE_PER_HOUR);
  });

  it('other days, each with a wind of its own', () => {
    const days = ['a', 'b', 'c', 'd'].flatMap((day) => leaning.map((mark) => ({ ...mark, day })));
    const sameDay = days.map((mark) => ({ ...mark, day: 'a' }));
    expect(plumbSd(fitted(days))).toBeLessThan(0.8 * plumbSd(fitted(sameDay)));
    expect(fitted(days).fit.crosswinds.map(({ day }) => day)).toEqual(['a', 'b', 'c', 'd']);
  });
});

describe('what the file says', () => {
  const priorsOf = (text: string) => lateralPriors({ setup: readSetup(text, 'setup.yaml') });
  const written = 'wind: { speed: 5 mph, from: 90 deg }';
  it('nothing of the wind: 2.5 mph', () =>
    expect(Math.abs(priorsOf(EXAMPLE.replace(written, '')).crosswindSd / MILE_PER_HOUR - 2.5)).toBeLessThan(
      1e-12 /* mph */,
    ));
  it('a wind without its error: 1 mph about it', () =>
    expect(Math.abs(priorsOf(EXAMPLE).crosswindSd / MILE_PER_HOUR - 1)).toBeLessThan(1e-12 /* mph */));
  it('its error, and that of its bearing where it comes from ahead', () => {
    const ahead = 'wind: { speed: 5 mph, speed_sd: 0.5 mph, from: 0 deg, from_sd: 20 deg }';
    const expected = Math.hypot(0.5, 5 * degrees(20));
    expect(
      Math.abs(priorsOf(EXAMPLE.replace(written, ahead)).crosswindSd / MILE_PER_HOUR - expected),
    ).toBeLessThan(1e-9 /* mph */);
  });
  it('how plumb the travel was found', () =>
    expect(
      priorsOf(EXAMPLE.replace('peep_to_pin: 33 in', 'peep_to_pin: 33 in\n  lean_sd: 0.2 deg')).plumb,
    ).toEqual({
      value: 0,
      sd: degrees(0.2),
    }));
});

describe('a bad start', () => {
  it('is not looked for in groups that could not show one', () => {
    const few = groupsOf(spinningRig, {}, [{ range: 36 }, { range: 55 }], twelve);
    expect(fitted(few).fit.launch.kind).toBe('not to be seen');
  });
  it('is, in near groups of many arrows', () => {
    const near = [5, 8, 12, 16, 20, 25, 30, 40, 50, 60, 80].map((range) => ({ range: range * 0.9144 }));
    expect(fitted(groupsOf(spinningRig, {}, near, (range) => (SPREAD * range) / 20)).fit.launch.kind).toBe(
      'not asked for',
    );
  });
});
