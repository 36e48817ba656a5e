import { describe, expect, it } from 'vitest';
import { agreementOf, tried } from '../../../src/calibration/agreement.ts';
import { type CalibrationProblem, calibrate } from '../../../src/calibration/fit.ts';
import { leftOut, without } from '../../../src/calibration/left-out.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { at } from '../../../src/numerics/at.ts';
import { chiSquaredSurvival } from '../../../src/numerics/distributions.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { priors, problem } from './invented-problem.ts';

/** Chronographs at the bow, which cost no flight: each off by so many of its 0.3 m/s. */
const speeds = (offs: readonly number[]): readonly Measurement[] =>
  offs.map((off) => ({
    kind: 'speed',
    range: si(0.5),
    speed: si(85.344 + 0.3 * off),
    sd: si(0.3),
    day: null,
  }));
/** Nothing is known of the speed but by them. */
const open = (offs: readonly number[]): CalibrationProblem => ({
  ...problem(speeds(offs)),
  priors: { ...priors, launch_speed: { value: 85, sd: 80, yardstick: 0.3 } },
});
const triedOf = (offs: readonly number[]) => {
  const one = open(offs);
  return leftOut(one, calibrate(one)).map(({ index }) => index);
};
const evens = (count: number) => Array.from({ length: count }, (_, i) => (i % 2 === 0 ? 0.4 : -0.4));

describe('leftOut', () => {
  it('leaves out each of ten', () => expect(triedOf(evens(10))).toEqual(evens(10).map((_, i) => i)));

  it('of eleven and of forty leaves out the six farthest from the others, the farthest first', () => {
    for (const count of [11, 40]) {
      const offs = evens(count).map((off, i) => off * (i < 8 ? i : 0));
      expect(triedOf(offs)).toEqual([7, 6, 5, 4, 3, 2]);
    }
  });

  it('of more than forty leaves out three at most, and none that stands out less than four fifths of the first', () => {
    const with4 = (last: readonly number[]) =>
      [...evens(41), ...last].map((off, i) => (i < 41 ? off / 4 : off));
    expect(triedOf(with4([6, -6, 6, -6]))).toHaveLength(3);
    expect(triedOf(with4([6, -5]))).toEqual([41, 42]);
    expect(triedOf(with4([6, -4.5]))).toEqual([41]);
  });

  it('of many that scatter so that a few away would not help leaves out none', () => {
    // All at ±3 standard errors: chi-squared is nine for each, and four as large as any away leave it so.
    expect(triedOf(evens(30).map((off) => 7.5 * off))).toEqual([]);
    // At ±1.8 it is 3.24 for each; four away leave less than three for each of 30.
    expect(triedOf(evens(30).map((off) => 4.5 * off))).toHaveLength(6);
  });

  it('tries as many in order where there is no fit of all', () => {
    expect(leftOut(open(evens(12)), null).map(({ index }) => index)).toEqual([0, 1, 2, 3, 4, 5]);
    expect(leftOut(open(evens(50)), null).map(({ index }) => index)).toEqual([0, 1, 2]);
  });

  it('finds what the others say: the mean of those, and their squares about it', () => {
    const offs = [0.5, -0.5, 1, 6];
    const [, , , last] = leftOut(open(offs), null);
    if (last === undefined) expect.fail();
    const mean = 1 / 3;
    const squares = (0.5 - mean) ** 2 + (-0.5 - mean) ** 2 + (1 - mean) ** 2;
    // The prior of 80 m/s pulls by 1e-5 of a standard error.
    expect(Math.abs(last.calibration.values.launch_speed - (85.344 + 0.3 * mean))).toBeLessThan(
      1e-3 /* m/s */,
    );
    expect(Math.abs(last.agreement.chiSquared - squares)).toBeLessThan(
      1e-3 /* of chi-squared: the prior pulls a hair */,
    );
    expect(last.calibration.problem.measurements).toHaveLength(3);
  });

  it('leaves the others as they stand', () => {
    const one = open([1, 2, 3, 4]);
    expect(without(one, [1, 3]).measurements).toEqual([0, 2].map((i) => at(one.measurements, i)));
  });
});

describe('agreement', () => {
  it('allows for an unknown that follows the measurements: one less than there are', () => {
    const { chiSquared, freedom, chance } = agreementOf(calibrate(open([1, -1, 2])));
    // By hand: mean 2/3, squares 1/9 + 25/9 + 16/9.
    expect(Math.abs(chiSquared - 42 / 9)).toBeLessThan(1e-3 /* of chi-squared: the prior pulls a hair */);
    expect(Math.abs(freedom - 2)).toBeLessThan(1e-4 /* the prior knows that much: (0.3/80)² */);
    expect(chance).toBeCloseTo(Math.exp(-42 / 18), 4 /* of two degrees of freedom */);
  });

  it('of one that alone tells an unknown has nothing to disagree with', () => {
    const { freedom, chance } = agreementOf(calibrate(open([50])));
    expect(freedom).toBeLessThan(0.5);
    expect(chance).toBe(1);
  });

  it('counts every measurement where none of them touches what is unknown', () => {
    const one = problem(speeds([1, -1, 2]));
    const unknown = { ...one.priors, scale_offset: { value: 0, sd: 0.3, yardstick: 0.1 } };
    expect(agreementOf(calibrate({ ...one, priors: unknown })).freedom).toBeCloseTo(3, 6);
  });

  it('counts every measurement where something was known before', () => {
    const { chiSquared, freedom, chance } = agreementOf(calibrate(problem(speeds([1, -1, 2]))));
    expect(freedom).toBe(3);
    expect(chance).toBeCloseTo(chiSquaredSurvival(chiSquared, 3), 12);
  });

  it('of a bow that shoots at the end of what is possible is none', () => {
    expect(tried(open([1, -1]))).not.toBeNull();
    expect(tried(open([500, 500]))).toBeNull();
  });

  it('of measurements that no fit is found for is none', () => expect(tried(open([Number.NaN]))).toBeNull());
});
