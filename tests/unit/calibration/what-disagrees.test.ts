import { describe, expect, it } from 'vitest';
import {
  type Disagreement,
  disagreementOf,
  disagreementUnfitted,
} from '../../../src/calibration/disagreement.ts';
import { type CalibrationProblem, calibrate } from '../../../src/calibration/fit.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { yards } from '../sight/invented-rig.ts';
import { beyond, priors, problem, shotMarks } from './invented-problem.ts';

/**
 * Chronographs at the bow of a speed of which nothing was known: each so many of its standard uncertainties off. Their mean is
 * the fit, so that all of this is sums by hand.
 */
const readings = (offs: readonly number[]): CalibrationProblem => ({
  ...problem(
    offs.map(
      (off): Measurement => ({
        kind: 'speed',
        range: si(0.5),
        speed: si(85.344 + 0.3 * off),
        sd: si(0.3),
        day: null,
      }),
    ),
  ),
  priors: { ...priors, launch_speed: { value: 85.344, sd: 80, yardstick: 0.3 } },
});
const of = (offs: readonly number[]): Disagreement | null => disagreementOf(calibrate(readings(offs)));
const found = (offs: readonly number[]): Disagreement => of(offs) ?? expect.fail('these agree');
/** The places of the measurements that a list names. */
const placesIn = (offs: readonly number[], list: readonly Measurement[]): readonly number[] =>
  list.map((one) => (one.kind === 'speed' ? offs.findIndex((off) => 85.344 + 0.3 * off === one.speed) : -1));
const marksIn = ({ explanations }: Disagreement): readonly number[] =>
  explanations.flatMap(({ explanation }) => (explanation.kind === 'mark' ? [explanation.index] : []));

describe('what stands out', () => {
  it('of nothing measured is nothing', () => expect(of([])).toBeNull());

  it('is a measurement more than three standard errors from the others: x √(4/5) of five of which one is x off', () => {
    expect(of([3.34, 0, 0, 0, 0])).toBeNull();
    expect(found([0, 0, 3.37, 0, 0]).isContradiction).toBe(false);
    expect(marksIn(found([0, 0, 3.37, 0, 0]))).toEqual([2]);
    expect(marksIn(found([0, -3.37, 0, 0, 0]))).toEqual([1]);
  });

  it('contradicts where the largest of five good ones would be as large once in a thousand times: 3.72', () => {
    const x = (t: number) => t / Math.sqrt(0.8);
    expect(found([x(3.7), 0, 0, 0, 0]).isContradiction).toBe(false);
    expect(found([x(3.74), 0, 0, 0, 0]).isContradiction).toBe(true);
  });

  it('contradicts where all scatter as good ones would once in a thousand times: 27.88 of nine degrees of freedom', () => {
    const all = (size: number) => Array.from({ length: 10 }, (_, i) => (i % 2 === 0 ? size : -size));
    expect(of(all(1.66))).toBeNull();
    const one = found(all(1.68));
    expect(one.isContradiction).toBe(true);
    expect(one.agreement?.chiSquared).toBeCloseTo(28.22, 1);
    expect(one.agreement?.freedom).toBeCloseTo(9, 3);
    // No one of them explains it, and none stands out.
    expect(one.explanations).toEqual([]);
    expect(one.together).toEqual([]);
    expect(one.worst).toHaveLength(3);
    expect(one.rest).toBeNull();
  });

  it('contradicts where no bow shoots so', () => {
    // 200.1 m/s, a third of its standard uncertainty above what is taken for possible.
    const pushed = calibrate(readings([382.5, 382.5]));
    expect(pushed.chiSquared).toBeLessThan(3);
    expect(disagreementOf(pushed)?.isContradiction).toBe(true);
  });
});

describe('what explains it', () => {
  it('is the measurement without which the others agree, and the fit is then theirs', () => {
    const one = found([0, 0.5, -0.5, 9, 0]);
    expect(marksIn(one)).toEqual([3]);
    expect(one.rest?.problem.measurements).toHaveLength(4);
    expect(one.explanations[0]?.agreement.chiSquared).toBeCloseTo(0.5, 3);
    expect([one.together, one.worst]).toEqual([[], []]);
  });

  it('is one alone where another would be 90 times less likely: chi-squared less freedom 9 higher', () => {
    // Without the first 4/5 y² is left, without the second 4/5 x² = 12.8.
    expect(marksIn(found([4, 2.1, 0, 0, 0, 0]))).toEqual([0]);
    const two = found([2.25, 4, 0, 0, 0, 0]);
    expect(marksIn(two)).toEqual([1, 0]);
    expect(two.rest).toBeNull();
    expect(two.together).toEqual([]);
  });

  it('has to leave the others agreeing: one in a hundred would be no better', () => {
    // Without the first, 4/5 y² of four degrees of freedom: 13.28 is the 1 % point.
    const without = (chiSquared: number) => [12, Math.sqrt(chiSquared / 0.8), 0, 0, 0, 0];
    expect(marksIn(found(without(13.1)))).toEqual([0]);
    expect(marksIn(found(without(13.5)))).toEqual([]);
  });

  it('is several together where each in turn stands out from the others', () => {
    const offs = [0, 0.3, 8, -0.3, 0, 12, 0.2, 0, -0.2];
    const one = found(offs);
    expect(one.explanations).toEqual([]);
    expect(placesIn(offs, one.together)).toEqual([5, 2]);
    expect(one.rest?.problem.measurements).toHaveLength(7);
    expect(one.worst).toEqual([]);
  });

  it('is not more than a third of all, nor more than four', () => {
    const five = [12, 8, 0, 0.3, -0.3];
    expect(found(five).together).toEqual([]);
    // Their mean is 4, from which -0.3 is farther than 8.
    expect(placesIn(five, found(five).worst)).toEqual([0, 4, 1]);
    const zeros = (count: number) => Array.from({ length: count }, (_, i) => (i % 2 === 0 ? 0.1 : -0.1));
    const four = [80, 60, 40, 20, ...zeros(9)];
    expect(placesIn(four, found(four).together)).toEqual([0, 1, 2, 3]);
    expect(found([80, 60, 40, 20, ...zeros(7)]).together).toEqual([]);
    expect(found([120, 100, 80, 60, 40, ...zeros(13)]).together).toEqual([]);
  });

  it('is none where two stand out alike and both are wrong', () => {
    const offs = [9, 9.2, 0, 0.1, -0.1, 0, 0.2, 0, 0];
    const one = found(offs);
    expect([one.explanations, one.together]).toEqual([[], []]);
    expect(one.rest).toBeNull();
    expect(placesIn(offs, one.worst).slice(0, 2)).toEqual([1, 0]);
  });
});

it('another number of the file that alone explains all is told, and no fit with it is used', () => {
  // Readings three times as far apart as a wheel of 1 mm has them; the place of the scale is known.
  const geared = shotMarks([20, 30, 40, 60, 80], 7e-4).map((mark) =>
    mark.kind === 'mark' ? { ...mark, reading: 12.75 + 3 * (mark.reading - 12.75) } : mark,
  );
  const known = { ...priors, scale_offset: { value: 0.35, sd: 0.1 } };
  const one = disagreementOf(calibrate({ ...problem(geared), priors: known }));
  expect(one?.isContradiction).toBe(true);
  expect(one?.explanations.map(({ explanation }) => explanation.kind)).toEqual(['travel per unit']);
  expect(one?.rest).toBeNull();
});

describe('marks that no fit is found for', () => {
  it('of nothing are nothing', () => expect(disagreementUnfitted(problem([]))).toBeNull());
  it('name the first three where nothing explains it', () => {
    const marks = [beyond(5000), beyond(6000), ...shotMarks([20, 40], 7e-4)];
    const one = disagreementUnfitted(problem(marks)) ?? expect.fail();
    expect(one).toMatchObject({ isContradiction: true, agreement: null, explanations: [], together: [] });
    expect(one.worst).toEqual(marks.slice(0, 3));
    expect([one.order, one.rest]).toEqual([[], null]);
  });
});

describe('ranges in the other unit', () => {
  const known = { ...priors, scale_offset: { value: 0, sd: 0.3 } };
  const asYards = (metres: readonly number[], spread: number): readonly Measurement[] =>
    shotMarks(
      metres.map((range) => range / 0.9144),
      spread,
    ).map((mark) => ({ ...mark, range: si(yards(mark.range)) }));
  const kindsIn = (spread: number) => {
    const one = disagreementOf(calibrate({ ...problem(asYards([30, 40, 50], spread)), priors: known }));
    return { one, kinds: one?.explanations.map(({ explanation }) => explanation.kind) };
  };

  it('are told once, whether or not the zero range is among them', () => {
    const { one, kinds } = kindsIn(3e-4);
    expect(one?.isContradiction).toBe(true);
    expect(kinds?.filter((kind) => kind === 'other unit')).toHaveLength(1);
    // No mark is left out for it.
    expect(one?.rest).toBeNull();
  });

  it('are told of marks that agree, where they would agree far better', () => {
    const spreads = [3e-4, 5e-4, 7e-4, 9e-4, 1.1e-3, 1.4e-3];
    const agreeing = spreads.map(kindsIn).filter(({ one }) => one?.isContradiction === false);
    const { one } = agreeing.at(-1) ?? expect.fail();
    expect(one?.explanations.map(({ explanation }) => explanation)).toEqual([
      expect.objectContaining({ kind: 'other unit', written: 'yd' }),
    ]);
    expect(one).toMatchObject({ together: [], worst: [], order: [], rest: null });
    expect(one?.agreement?.chiSquared).toBeGreaterThan(
      Number(at(one?.explanations ?? [], 0).agreement.chiSquared) + 4,
    );
    expect(kindsIn(0.1).one).toBeNull();
  });
});
