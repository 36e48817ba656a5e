import { describe, expect, it } from 'vitest';
import { calibrate } from '../../../src/calibration/fit.ts';
import { digitsSwapped, wrongMark } from '../../../src/calibration/likely-slip.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import type { Measurement, PencilMark, ShotMark } from '../../../src/calibration/measurement.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { markAt as inventedMark, priors, problem, rightReading } from './invented-problem.ts';

/** A mark whose error on the target is so much of its range. */
const markAt = (range: number, more: Partial<ShotMark> = {}): ShotMark =>
  inventedMark(range, { sd: si(3e-4 * range), ...more });
const known = { ...priors, scale_offset: { value: 0, sd: 0.3 } };
const [twenty, thirty, forty, fifty, sixty] = [20, 30, 40, 50, 60].map(yards) as [
  number,
  number,
  number,
  number,
  number,
];
const good = () => [twenty, thirty, forty, fifty].map((range) => markAt(range));
const judged = (wrong: ShotMark, others: readonly ShotMark[] = good()) =>
  wrongMark(calibrate({ ...problem(others), priors: known }), wrong, [...others, wrong]);

describe('digitsSwapped', () => {
  const sorted = (reading: number) => digitsSwapped(reading).toSorted((a, b) => a - b);
  it('of 72 are 27, and 70.2 and 702 of a nought that nobody wrote', () =>
    expect(sorted(72)).toEqual([27, 70.2, 702]));
  it('of 50.6 are 5.6, 56 and 500.6', () => expect(sorted(50.6)).toEqual([5.6, 56, 500.6]));
  it('of a number below zero are the same below it', () => {
    for (const reading of [72, 50.6, 3.9])
      expect(sorted(-reading)).toEqual(
        digitsSwapped(reading)
          .map((one) => -one)
          .toSorted((a, b) => a - b),
      );
  });
  it('of 44 are only those with a nought', () => expect(sorted(44)).toEqual([40.4, 404]));
});

describe('a mark that does not belong', () => {
  it('would read what the bow says, as sure as the fit without it and its own group', () => {
    const wrong = markAt(sixty, { reading: 80 });
    const rest = calibrate({ ...problem(good()), priors: known });
    const { mark, wouldRead, wouldReadSd } = wrongMark(rest, wrong, [...good(), wrong]);
    expect(mark).toBe(wrong);
    const table = marksFor(rest.rig, [sixty]);
    expect(wouldRead).toBeCloseTo(at(table.marks, 0).reading ?? Number.NaN, 4 /* numbers */);
    const [sure = expect.fail()] = markUncertainty(rest, table);
    const expected = Math.hypot(sure.onTargetSd, wrong.sd) / Math.abs(sure.heightPerUnit);
    expect(Math.abs(wouldReadSd / expected - 1)).toBeLessThan(
      0.01 /* relative: another way to the same error */,
    );
  });

  it('was off by one digit', () => {
    const right = Number(rightReading(sixty).toFixed(1));
    // 30 numbers or so: its first digit is another.
    expect(Math.floor(right / 10)).toBe(3);
    expect(judged(markAt(sixty, { reading: right + 50 })).slip).toEqual({ kind: 'one digit', meant: right });
  });

  it('is nothing usual where no slip gives its number', () => {
    // Half as much again: no digit, no neighbour and no unit gives that.
    expect(judged(markAt(sixty, { reading: 122.22 })).slip).toBeNull();
  });

  it('was copied from another line, before anything else', () => {
    const copied = judged(markAt(sixty, { reading: rightReading(thirty) }));
    expect(copied.slip).toEqual({ kind: 'reading of another range', range: thirty });
    // The same range again is no other line.
    const again = judged(markAt(sixty, { reading: rightReading(thirty) }), [
      ...good().filter(({ range }) => range !== thirty),
      markAt(sixty, { reading: rightReading(thirty) + 1e-9 }),
    ]);
    expect(again.slip?.kind).not.toBe('digits swapped');
  });

  it('was set for a round range near by that was not shot: 70 and 80 yd for 60, and not 90', () => {
    const readFor = (range: number) => judged(markAt(sixty, { reading: rightReading(range) + 1e-3 })).slip;
    for (const count of [70, 80]) {
      const slip = readFor(yards(count));
      expect(slip?.kind).toBe('reading of another range');
      if (slip?.kind === 'reading of another range') expect(slip.range).toBeCloseTo(yards(count), 9 /* m */);
    }
    expect(readFor(yards(90))?.kind).not.toBe('reading of another range');
    // Ten yards nearer where sixty is the nearest that was shot otherwise.
    const far = [60, 80, 90].map(yards).map((range) => markAt(range));
    const slip = judged(markAt(yards(70), { reading: rightReading(yards(50)) + 1e-3 }), far).slip;
    expect(slip).toMatchObject({ kind: 'reading of another range' });
  });

  it('was set for a round range in metres where the ranges are', () => {
    const metres = [20, 30, 40, 50].map((range) => markAt(range));
    const slip = judged(markAt(60, { reading: rightReading(70) + 1e-3 }), metres).slip;
    expect(slip).toEqual({ kind: 'reading of another range', range: 70 });
  });

  it('was shot at as many of the other unit', () => {
    expect(judged(markAt(sixty, { reading: rightReading(60) })).slip).toEqual({
      kind: 'other unit',
      unit: 'm',
    });
    const metres = [20, 30, 40, 50].map((range) => markAt(range));
    expect(judged(markAt(60, { reading: rightReading(sixty) }), metres).slip).toEqual({
      kind: 'other unit',
      unit: 'yd',
    });
  });

  it('stands on the wrong side of the aim, or in the other unit of length', () => {
    const { heightPerTravel } = at(marksFor(inventedRig, [sixty]).marks, 0);
    /** Read for a group so many metres high, and written as another height. */
    const writtenAs = (high: number, vertical: number) =>
      judged(markAt(sixty, { reading: rightReading(sixty) + high / heightPerTravel / 1e-3, vertical })).slip;
    expect(writtenAs(0.2, -0.2)).toEqual({ kind: 'height turned', meant: 0.2 });
    const inCentimetres = writtenAs(0.2, 0.2 * 2.54);
    expect(inCentimetres).toMatchObject({ kind: 'height in another unit', really: 'cm' });
    if (inCentimetres?.kind === 'height in another unit') expect(inCentimetres.meant).toBeCloseTo(0.2, 12);
    const inInches = writtenAs(0.4, 0.4 / 2.54);
    expect(inInches).toMatchObject({ kind: 'height in another unit', really: 'in' });
    if (inInches?.kind === 'height in another unit') expect(inInches.meant).toBeCloseTo(0.4, 12);
  });

  it('was off by the digit that brings it nearest', () => {
    const right = Number(rightReading(sixty).toFixed(1));
    const last = Math.round(right * 10) % 10;
    // Half a number off; that with the digit before the right one would be near enough too.
    const written = Math.floor(right) + ((last + 5) % 10) / 10;
    expect(judged(markAt(sixty, { reading: written })).slip).toEqual({ kind: 'one digit', meant: right });
  });

  it('is no slip that leaves it three standard uncertainties off', () => {
    const others = [twenty, thirty, fifty, sixty].map((range) => markAt(range));
    const right = Number(rightReading(forty).toFixed(1));
    const { wouldReadSd } = judged(markAt(forty, { reading: right + 50 }), others);
    expect(wouldReadSd).toBeLessThan(0.6 /* numbers */);
    expect(judged(markAt(forty, { reading: right + 50 }), others).slip?.kind).toBe('one digit');
    expect(judged(markAt(forty, { reading: right + 52 }), others).slip).toBeNull();
  });

  it('was copied from another line whatever the bow says of that', () => {
    // A group shot a foot high on purpose, with a reading that is none of its range's.
    const odd = yards(37);
    const { heightPerTravel } = at(marksFor(inventedRig, [odd]).marks, 0);
    const high = markAt(odd, { vertical: 0.3, reading: rightReading(odd) + 0.3 / heightPerTravel / 1e-3 });
    const copied = markAt(sixty, { reading: high.reading });
    expect(judged(copied, [...good(), high]).slip).toEqual({ kind: 'reading of another range', range: odd });
  });

  it('was set for a range that was shot, however odd', () => {
    const odd = yards(37);
    const slip = judged(markAt(sixty, { reading: rightReading(odd) + 1e-3 }), [...good(), markAt(odd)]).slip;
    expect(slip).toEqual({ kind: 'reading of another range', range: odd });
  });

  it('was set twenty yards too far at a hundred', () => {
    const far = [60, 80, 90].map(yards).map((range) => markAt(range));
    const slip = judged(markAt(yards(100), { reading: rightReading(yards(120)) + 1e-3 }), far).slip;
    expect(slip?.kind).toBe('reading of another range');
    if (slip?.kind === 'reading of another range') expect(slip.range).toBeCloseTo(yards(120), 9 /* m */);
  });

  it('is asked of no range behind the archer, nor of one that no arrow gets to', () => {
    const near = judged(markAt(yards(10), { reading: 122.22 }));
    expect(near.slip).toBeNull();
    const rest = calibrate({ ...problem(good()), priors: known });
    const wrong = markAt(sixty, { reading: 122.22 });
    expect(wrongMark(rest, wrong, [...good(), wrong, markAt(fifty, { range: si(5000) })]).slip).toBeNull();
  });

  it('on a strip has its digits in millimetres', () => {
    const lineAt = (range: number, onTape?: number): PencilMark => {
      const { reading, ...group } = markAt(range);
      return { ...group, kind: 'pencil', onTape: onTape ?? (reading - 12.4) * 1e-3, lineAt: null };
    };
    const lines = [twenty, thirty, forty, fifty].map((range) => lineAt(range));
    const rest = calibrate({
      ...problem(lines),
      rig: { ...inventedRig, scale: null },
      priors: { ...known, scale_offset: { value: 0, sd: 1e-6 }, tape_ratio: { value: 1, sd: 0.02 } },
    });
    const millimetres = Number((((rightReading(sixty) - 12.4) * 10) / 10).toFixed(1));
    const text = millimetres.toFixed(1);
    // 18.4 and the like with its first two digits in each other's place.
    const swapped = Number(`${text[1]}${text[0]}.${text[3]}`);
    const wrong = lineAt(sixty, swapped / 1000);
    const all: readonly Measurement[] = [...lines, wrong];
    const { slip } = wrongMark(rest, wrong, all);
    expect(slip?.kind).toBe('digits swapped');
    if (slip?.kind === 'digits swapped') expect(slip.meant).toBeCloseTo(millimetres / 1000, 12 /* m */);
  });
});
