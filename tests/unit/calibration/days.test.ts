import { describe, expect, it } from 'vitest';
import { dayEstimates, hiddenByEvenings } from '../../../src/calibration/day-estimates.ts';
import { possibleBreaks, sameDayChances, USUAL_DAY } from '../../../src/calibration/days.ts';
import { calibrate, estimateOf } from '../../../src/calibration/fit.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import type { Day, Measurement } from '../../../src/calibration/measurement.ts';
import { dayShifts } from '../../../src/calibration/prediction.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { NO_DAYS, problem, shotMarks } from './invented-problem.ts';

const shotOn = (range: number, day: Day) => ({ range: si<'m'>(range), day });

describe('sameDayChances', () => {
  it('marks of one date are of one day, of two dates are not, and an undated one is of neither', () =>
    expect(sameDayChances([shotOn(20, 'a'), shotOn(60, 'a'), shotOn(60, 'b'), shotOn(60, null)])).toEqual([
      [1, 1, 0, 0],
      [1, 1, 0, 0],
      [0, 0, 1, 0],
      [0, 0, 0, 1],
    ]));

  it('undated marks are of one day up to the widest gap', () =>
    expect(sameDayChances([20, 30, 60, 70].map((range) => shotOn(range, null)))).toEqual([
      [1, 1, 0, 0],
      [1, 1, 0, 0],
      [0, 0, 1, 1],
      [0, 0, 1, 1],
    ]));

  it('of several gaps as wide each may be the one', () => {
    const [first = []] = sameDayChances([20, 30, 40, 50].map((range) => shotOn(range, null)));
    expect(first.map((chance) => Math.round(chance * 3))).toEqual([3, 2, 1, 0]);
  });
});

describe('possibleBreaks', () => {
  it('is in the middle of the widest gap between undated ranges, in whatever order they stand', () =>
    expect(possibleBreaks([shotOn(100, null), shotOn(9, null), shotOn(60, 'a'), shotOn(30, null)])).toEqual([
      65,
    ]));
  it('of several gaps as wide to a tenth is in each', () =>
    expect(possibleBreaks([10, 20, 29.1, 38].map((range) => shotOn(range, null)))).toEqual([15, 24.55]));
  it('of one range, or of dated marks alone, is none', () => {
    expect(possibleBreaks([shotOn(20, null), shotOn(20, null)])).toEqual([]);
    expect(possibleBreaks([shotOn(20, 'a'), shotOn(60, 'a')])).toEqual([]);
  });
  it('does not part marks of one date', () =>
    expect(sameDayChances([shotOn(20, 'a'), shotOn(60, 'a'), shotOn(20, null), shotOn(60, null)])).toEqual([
      [1, 1, 0, 0],
      [1, 1, 0, 0],
      [0, 0, 1, 0],
      [0, 0, 0, 1],
    ]));
});

describe('dayShifts', () => {
  const far = shotMarks([20, 100], 1e-4, () => 0, {
    launch_speed: inventedRig.launchSpeed,
    drag_scale: 1,
    peep_height: inventedRig.geometry.peepHeight,
    scale_ratio: 1,
    scale_offset: 0,
  });
  // Independent point-mass figures, of a bow set to hit at 20 yd again.
  it('2 ft/s move a hit at 100 yd by 2.9 in, 1 % of density by 0.24 in', () => {
    const [near, hundred] = dayShifts(inventedRig, far, USUAL_DAY);
    const [speed = 0, density = 0, wind = 0] = (hundred ?? []).map(
      (shift, e) => shift - 5 * at(near ?? [], e),
    );
    expect(Math.abs((2 * speed) / (2.92 * 0.0254) - 1)).toBeLessThan(0.1 /* relative: of another arrow */);
    expect(Math.abs(density / (-0.24 * 0.0254) - 1)).toBeLessThan(0.1 /* relative */);
    // A head wind of 1 mph: 0.23 in low.
    expect(Math.abs(wind / (1.5 * 0.23 * 0.0254) - 1)).toBeLessThan(0.15 /* relative */);
  });
});

/** The bow's marks, the farther ones of an evening on which it was `slower`. */
function twoEvenings(slower: number, days: readonly [Day, Day], sdPerRange = 2e-4): readonly Measurement[] {
  const marks = shotMarks([20, 30, 40, 60, 70, 80], sdPerRange);
  const shifts = dayShifts(inventedRig, marks, { ...NO_DAYS, speed: -slower });
  return marks.map((mark, i) => {
    if (mark.kind !== 'mark') return mark;
    const second = mark.range > yards(50);
    const [shift = 0] = at(shifts, i);
    return { ...mark, day: second ? days[1] : days[0], vertical: mark.vertical + (second ? shift : 0) };
  });
}

describe('a day as a random effect', () => {
  it('of no size leaves the fit as it was', () => {
    const marks = twoEvenings(0, ['a', 'b']);
    const [plain, dated] = [
      calibrate(problem(marks.map((mark) => ({ ...mark, day: null })))),
      calibrate(problem(marks)),
    ];
    expect(dated.values).toEqual(plain.values);
    expect(dated.covariance).toEqual(plain.covariance);
  });

  it('keeps marks of one day from knowing the speed better than the day itself is known', () => {
    const many = shotMarks([20, 30, 40, 50, 60, 70, 80], 1e-5).map((mark) => ({ ...mark, day: 'a' }));
    const found = calibrate({ ...problem(many), days: USUAL_DAY });
    expect(estimateOf(found, 'launch_speed').sd).toBeGreaterThan(USUAL_DAY.speed);
    expect(estimateOf(calibrate(problem(many)), 'launch_speed').sd).toBeLessThan(USUAL_DAY.speed);
  });

  it('says by day what it is off by: two evenings 0.6 m/s apart, within the errors told', () => {
    const found = calibrate({ ...problem(twoEvenings(0.6, ['2026-08-29', '2026-08-30'])), days: USUAL_DAY });
    const [first, second] = dayEstimates(found);
    expect([first?.day, second?.day, first?.measurements]).toEqual(['2026-08-29', '2026-08-30', 3]);
    const apart = (first?.speedOffset ?? 0) - (second?.speedOffset ?? 0);
    expect(apart).toBeGreaterThan(0.1);
    expect(Math.abs(apart - 0.6)).toBeLessThan(2 * Math.hypot(first?.sd ?? 0, second?.sd ?? 0));
    // Three effects of one day together, told as speed; the marks may only make it surer.
    const [speed = 0, density = 0, wind = 0] = at(found.linear.shifts, 5);
    const before = USUAL_DAY.speed * Math.hypot(1, density / speed, wind / speed);
    expect(second?.sd).toBeLessThan(1.05 * before);
  });

  it('does not call marks that differ by an evening outliers of a day of their own', () => {
    const found = calibrate({ ...problem(twoEvenings(0.6, ['a', 'b'])), days: USUAL_DAY });
    for (const { studentised } of found.residuals)
      expect(Math.abs(studentised)).toBeLessThan(3 /* standard errors */);
  });
});

describe('hiddenByEvenings', () => {
  it.each([
    ['is what a fit of marks that were shot so says, to 5 %', []],
    [
      'leaves a mark that names its day on that day',
      shotMarks([75], 1e-3).map((mark) => ({ ...mark, day: '2026-08-30' })),
    ],
  ])('%s', (_, dated) => {
    const [together, apart] = [0, 2 * USUAL_DAY.speed].map((slower) =>
      calibrate({ ...problem([...twoEvenings(slower, [null, null], 1e-3), ...dated]), days: USUAL_DAY }),
    );
    if (together === undefined || apart === undefined) expect.fail();
    const far = yards(90);
    const [mark] = markUncertainty(together, marksFor(together.rig, [far]));
    if (mark === undefined) expect.fail();
    const reading = ({ rig }: typeof together) => marksFor(rig, [far]).marks[0]?.reading ?? Number.NaN;
    const moved = Math.abs((reading(apart) - reading(together)) * mark.heightPerUnit);
    expect(Math.abs(hiddenByEvenings(together, mark) / moved - 1)).toBeLessThan(
      0.05 /* relative: it is linear */,
    );
  });
  it('is nothing where the days are named', () => {
    const found = calibrate({ ...problem(twoEvenings(0, ['a', 'b'])), days: USUAL_DAY });
    const [mark] = markUncertainty(found, marksFor(found.rig, [yards(90)]));
    expect(mark === undefined ? Number.NaN : hiddenByEvenings(found, mark)).toBe(0);
  });
});
