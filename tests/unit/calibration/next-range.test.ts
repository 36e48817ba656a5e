import { describe, expect, it } from 'vitest';
import { USUAL_DAY } from '../../../src/calibration/days.ts';
import { calibrate } from '../../../src/calibration/fit.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import { nextRange } from '../../../src/calibration/next-range.ts';
import { dayShifts } from '../../../src/calibration/prediction.ts';
import { at } from '../../../src/numerics/at.ts';
import { inverseSymmetric, times } from '../../../src/numerics/linear-algebra.ts';
import { type Metres, si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { priors, problem, shotMarks } from './invented-problem.ts';

const ranges = [20, 40, 60, 80].map(yards);
const sdAt = (range: number): Metres => si(3e-4 * range);
/** The scale's place is known to half a number, so that the covariance can be inverted without losing digits. */
const known = { ...priors, scale_offset: { value: 0, sd: 0.5 } };
const fitted = () => calibrate({ ...problem(shotMarks([20, 50], 0.0005)), days: USUAL_DAY, priors: known });
const rms = (values: readonly number[]): number =>
  Math.sqrt(values.reduce((sum, value) => sum + value ** 2, 0) / values.length);

/** The marks' uncertainties on the target when one more row g/s stands in the normal matrix, by inverting it anew. */
function afterGroupAt(range: number): readonly number[] {
  const fit = fitted();
  const marks = markUncertainty(fit, marksFor(fit.rig, ranges));
  const [shot = expect.fail()] = markUncertainty(fit, marksFor(fit.rig, [range]));
  const reading = marksFor(fit.rig, [range]).marks[0]?.reading ?? Number.NaN;
  const mark = { kind: 'mark', range: si<'m'>(range), reading, vertical: 0 } as const;
  const asShot = { ...mark, sd: si<'m'>(0), cant: si<'rad'>(0), day: null };
  const [day = []] = dayShifts(fit.rig, [asShot], USUAL_DAY);
  const s = Math.hypot(sdAt(range), ...day) / Math.abs(shot.heightPerUnit);
  const normal = inverseSymmetric(fit.covariance).map((row, i) =>
    row.map((value, j) => value + (at(shot.gradient, i) * at(shot.gradient, j)) / s ** 2),
  );
  const covariance = inverseSymmetric(normal);
  return marks.map(({ gradient, heightPerUnit }) => {
    const variance = times(covariance, gradient).reduce((sum, value, i) => sum + value * at(gradient, i), 0);
    return Math.sqrt(variance) * Math.abs(heightPerUnit);
  });
}

describe('nextRange', () => {
  it('tells of every mark what it is unsure by after that group, its day among its errors', () => {
    const fit = fitted();
    const { range, now, after, rmsNow, rmsAfter } = nextRange(fit, ranges, { sdAt });
    const marks = markUncertainty(fit, marksFor(fit.rig, ranges));
    const expected = afterGroupAt(range);
    for (const [i, { onTargetSd }] of marks.entries()) {
      expect(Math.abs(at(now, i) / onTargetSd - 1)).toBeLessThan(1e-6 /* relative */);
      expect(Math.abs(at(after, i) / at(expected, i) - 1)).toBeLessThan(1e-4 /* relative: inverted twice */);
      expect(at(after, i)).toBeLessThan(at(now, i));
    }
    expect(rmsNow).toBeCloseTo(rms(now), 12 /* m */);
    expect(rmsAfter).toBeCloseTo(rms(after), 12 /* m */);
  });

  it('is the one after which all are surest', () => {
    const { range } = nextRange(fitted(), ranges, { sdAt });
    const left = ranges.map((one) => rms(afterGroupAt(one)));
    expect(range).toBe(at(ranges, left.indexOf(Math.min(...left))));
  });

  it('is one of those where it can be shot, for the marks of all', () => {
    const few = [25, 35].map(yards);
    const { range, now, rmsAfter } = nextRange(fitted(), ranges, { sdAt, candidates: few });
    const left = few.map((one) => rms(afterGroupAt(one)));
    expect(range).toBe(at(few, left.indexOf(Math.min(...left))));
    expect(now).toHaveLength(4);
    expect(Math.abs(rmsAfter / Math.min(...left) - 1)).toBeLessThan(1e-4 /* relative */);
  });

  it('is one where the group would be on the target', () => {
    const asked: number[] = [];
    const { range } = nextRange(fitted(), ranges, {
      sdAt,
      isOnTarget: (where, markSd) => {
        asked.push(markSd);
        return where < yards(50);
      },
    });
    const left = ranges.slice(0, 2).map((one) => rms(afterGroupAt(one)));
    expect(range).toBe(at(ranges, left.indexOf(Math.min(...left))));
    const { now } = nextRange(fitted(), ranges, { sdAt });
    for (const [i, sd] of asked.entries())
      expect(Math.abs(sd / at(now, i) - 1)).toBeLessThan(1e-6 /* relative */);
  });

  it('is the nearest where it would be on the target nowhere', () =>
    expect(
      nextRange(fitted(), ranges, { sdAt, candidates: [70, 30, 50].map(yards), isOnTarget: () => false })
        .range,
    ).toBe(yards(30)));

  it('of nowhere is an error', () =>
    expect(() => nextRange(fitted(), ranges, { sdAt, candidates: [] })).toThrow('no range to choose from'));

  it('of a sight without numbers is the same range', () => {
    const bare = calibrate({
      ...problem(shotMarks([20, 50], 0.0005)),
      days: USUAL_DAY,
      priors: known,
      rig: { ...inventedRig, scale: null },
      measurements: [],
    });
    const scaled = calibrate({
      ...bare.problem,
      rig: inventedRig,
      priors: { ...known, scale_offset: { value: 0, sd: 0.001 } },
    });
    // A thousandth of a number of 1 mm is a micrometre of travel.
    const alike = calibrate({ ...bare.problem, priors: { ...known, scale_offset: { value: 0, sd: 1e-6 } } });
    const [one, other] = [scaled, alike].map((fit) => nextRange(fit, ranges, { sdAt }));
    if (one === undefined || other === undefined) expect.fail();
    expect(other.range).toBe(one.range);
    expect(Math.abs(other.rmsAfter / one.rmsAfter - 1)).toBeLessThan(
      1e-6 /* relative: numbers of 1 mm or metres */,
    );
  });
});
