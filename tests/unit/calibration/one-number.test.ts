import { describe, expect, it } from 'vitest';
import { type Calibration, type CalibrationProblem, calibrate } from '../../../src/calibration/fit.ts';
import type { Measurement, PencilMark, ShotMark } from '../../../src/calibration/measurement.ts';
import { AGREES, inOtherUnit, type OneNumber, oneNumbers } from '../../../src/calibration/one-number.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { priors, problem } from './invented-problem.ts';

const SPREAD = 7e-4;
/** Marks of a rig at ranges in m, exact to the last digit, each as sure as six good arrows. */
const marksOf = (rig: Rig, ranges: readonly number[]): readonly ShotMark[] =>
  marksFor(rig, ranges).marks.map(({ range, reading }) => ({
    kind: 'mark',
    range,
    reading: reading ?? Number.NaN,
    vertical: 0,
    sd: si(SPREAD * range),
    cant: si(0),
    day: null,
  }));
/** The same as lines on a strip that goes `ratio` times as far as the pin. */
const linesOf = (ranges: readonly number[], ratio: number): readonly PencilMark[] =>
  marksFor(inventedRig, ranges).marks.map(({ range, travel }) => ({
    kind: 'pencil',
    range,
    onTape: ratio * travel,
    lineAt: null,
    vertical: 0,
    sd: si(SPREAD * range),
    cant: si(0),
    day: null,
  }));
const ranges = [25, 40, 55, 70].map(yards);
/** The place of the scale is written in the file, to a few tenths of a number. */
const known = { ...priors, scale_offset: { value: 0, sd: 0.3 } };
const asked = (measurements: readonly Measurement[], more: Partial<CalibrationProblem> = {}) => ({
  ...problem(measurements),
  priors: known,
  ...more,
});
/** Those that all would agree with. */
const foundIn = (one: CalibrationProblem, fit: Calibration | null = null): readonly OneNumber[] =>
  oneNumbers(one, fit)
    .filter(({ agreement: { chance } }) => chance >= AGREES)
    .map(({ cause }) => cause);
function only<K extends OneNumber['kind']>(
  one: CalibrationProblem,
  kind: K,
): Extract<OneNumber, { kind: K }> {
  const isOf = (cause: OneNumber): cause is Extract<OneNumber, { kind: K }> => cause.kind === kind;
  const [first, ...others] = foundIn(one).filter(isOf);
  if (first === undefined || others.length > 0) expect.fail(`not one ${kind}`);
  return first;
}
const scaleWith = (change: Partial<NonNullable<Rig['scale']>>): Rig => ({
  ...inventedRig,
  scale: { travelPerUnit: 0.001, direction: 1, atZero: 12.4, ...change },
});
/** What is open by its prior pulls an exact number a little: by a hundredth of its error or so. */
const near = (found: number, right: number, share: number): void =>
  expect(Math.abs(found / right - 1)).toBeLessThan(share);

describe('one number of the file that would make all agree', () => {
  it('is none where all agree as they are, but for what they leave as it was', () => {
    const kinds = foundIn(asked(marksOf(inventedRig, ranges))).map(({ kind }) => kind);
    for (const kind of ['travel per unit', 'reading at zero', 'launch speed', 'direction'] as const)
      expect(kinds).not.toContain(kind);
  });

  it('is the travel per unit: 0.67 mm in place of 1 mm', () => {
    const { value, stated } = only(
      asked(marksOf(scaleWith({ travelPerUnit: 0.00067 }), ranges)),
      'travel per unit',
    );
    near(value, 0.00067, 0.01 /* relative */);
    expect(stated).toBe(0.001);
  });

  it('is the reading at zero: 20.4 in place of 12.4', () => {
    const { value, stated } = only(asked(marksOf(scaleWith({ atZero: 20.4 }), ranges)), 'reading at zero');
    near(value, 20.4, 0.01 /* relative */);
    expect(stated).toBe(12.4);
    // The same travel on a wheel of two millimetres a number.
    const wheel = scaleWith({ travelPerUnit: 0.002 });
    const shots = marksOf({ ...wheel, scale: { travelPerUnit: 0.002, direction: 1, atZero: 20.4 } }, ranges);
    near(only(asked(shots, { rig: wheel }), 'reading at zero').value, 20.4, 0.01 /* relative */);
  });

  it('is the way that the numbers grow', () => {
    expect(only(asked(marksOf(scaleWith({ direction: -1 }), ranges)), 'direction').increases).toBe('up');
    const up = asked(marksOf(inventedRig, ranges), { rig: scaleWith({ direction: -1 }) });
    expect(only(up, 'direction').increases).toBe('down');
  });

  it('is the launch speed, to within 15 %, which no chronograph is off by', () => {
    const shotWith = (launchSpeed: number) =>
      asked(marksOf({ ...inventedRig, launchSpeed: si(launchSpeed) }, ranges));
    const { value, stated } = only(shotWith(76), 'launch speed');
    near(value, 76, 0.01 /* relative */);
    expect(stated).toBe(85.344);
    near(only(shotWith(96), 'launch speed').value, 96, 0.01 /* relative */);
    expect(foundIn(shotWith(71)).map(({ kind }) => kind)).not.toContain('launch speed');
    expect(foundIn(shotWith(100)).map(({ kind }) => kind)).not.toContain('launch speed');
  });

  it('is the unit of the ranges, that of the zero range or not', () => {
    const metres = [25, 40, 55, 70];
    const asYards = (shots: readonly ShotMark[]) =>
      shots.map((shot) => ({ ...shot, range: si<'m'>(yards(shot.range)) }));
    const found = foundIn(asked(asYards(marksOf(inventedRig, metres))));
    expect(found).toContainEqual({ kind: 'other unit', written: 'yd', isZeroToo: false });
    const zeroedAt20 = { ...inventedRig, zeroRange: si<'m'>(20) };
    const both = oneNumbers(asked(asYards(marksOf(zeroedAt20, metres))), null).filter(
      ({ cause }) => cause.kind === 'other unit' && cause.isZeroToo,
    );
    expect(both).toHaveLength(1);
    expect(both[0]?.calibration.chiSquared).toBeLessThan(1e-3);
    expect(both[0]?.calibration.rig.zeroRange).toBeCloseTo(20, 9 /* m */);
  });

  it('says nothing of a scale by a chronograph, nor of a number that was left to the marks', () => {
    const speed: Measurement = { kind: 'speed', range: si(0.5), speed: si(70), sd: si(0.3), day: null };
    const kinds = (one: CalibrationProblem) => oneNumbers(one, null).map(({ cause }) => cause.kind);
    expect(kinds(asked([speed])).toSorted()).toEqual([
      'other unit',
      'other unit',
      'other unit',
      'other unit',
    ]);
    const open = { ...known, launch_speed: { value: 85.344, sd: 80, yardstick: 0.3 } };
    const slow = marksOf({ ...inventedRig, launchSpeed: si(76) }, ranges);
    expect(kinds(asked(slow, { priors: open }))).not.toContain('launch speed');
    expect(kinds(asked([]))).toEqual([]);
    expect(kinds(asked(slow, { rig: { ...inventedRig, scale: null } }))).not.toContain('direction');
  });
});

describe('of a strip without numbers', () => {
  const bare: Rig = { ...inventedRig, scale: null };
  const strip = (lines: readonly PencilMark[]) =>
    asked(lines, {
      rig: bare,
      priors: { ...known, scale_offset: { value: 0, sd: 2e-4 }, tape_ratio: { value: 1.5, sd: 0.02 } },
    });

  it('it is how far it goes for the pin: 2.2 times in place of 1.5', () => {
    const { value, stated } = only(strip(linesOf(ranges, 2.2)), 'travel ratio');
    near(value, 2.2, 0.02 /* relative */);
    expect(stated).toBe(1.5);
  });

  it('it is its line of the zero range: drawn 4 mm too far down, it should be 4 mm further up', () => {
    // The line is where the pin stands at the zero range, by what was known before the marks.
    const lines = linesOf(ranges, 1.5).map((line) => ({ ...line, lineAt: 0, onTape: line.onTape - 4e-3 }));
    const { value } = only(strip(lines), 'line of zero');
    near(value, -4e-3, 0.03 /* relative */);
  });

  it('it is the side that it was measured from', () => {
    const lines = linesOf(ranges, 1.5).map((line) => ({ ...line, onTape: -line.onTape }));
    expect(only(strip(lines), 'strip turned')).toEqual({ kind: 'strip turned' });
  });

  it('it is none of these where readings were written', () => {
    const kinds = oneNumbers(
      asked(marksOf(inventedRig, ranges), { priors: { ...known, tape_ratio: { value: 1.5, sd: 0.02 } } }),
      null,
    ).map(({ cause }) => cause.kind);
    for (const kind of ['travel ratio', 'line of zero', 'strip turned'] as const)
      expect(kinds).not.toContain(kind);
  });

  it('the place of the line is the scale’s where there is one', () => {
    const lines = linesOf(ranges, 1.5).map((line) => ({ ...line, lineAt: 12.4, onTape: line.onTape - 4e-3 }));
    const kinds = oneNumbers({ ...strip(lines), rig: inventedRig }, null).map(({ cause }) => cause.kind);
    expect(kinds).not.toContain('line of zero');
    expect(kinds).not.toContain('direction');
  });
});

describe('of many measurements', () => {
  const many = (count: number) =>
    marksOf(
      scaleWith({ travelPerUnit: 0.00067 }),
      Array.from({ length: count }, (_, i) => yards(25 + i)),
    );

  it('up to forty, every number is tried, whether or not all agree with it', () => {
    const found = oneNumbers(asked(many(40)), null);
    expect(found.map(({ cause }) => cause.kind)).toContain('travel per unit');
    expect(found.filter(({ agreement: { chance } }) => chance < AGREES)).not.toEqual([]);
  });

  it('of more, those alone that explain every second of them and the three that fit worst', () => {
    const one = asked(many(41));
    const kinds = new Set(oneNumbers(one, null).map(({ cause }) => cause.kind));
    expect([...kinds]).toEqual(['travel per unit']);
    // One of the marks that are not in the sample is twenty numbers off: no number explains that.
    const wrong = asked(
      many(41).map((mark, i) => (i === 31 ? { ...mark, reading: mark.reading + 20 } : mark)),
    );
    expect(foundIn({ ...wrong, measurements: wrong.measurements.slice(0, 40) })).toEqual([]);
    const worst = calibrate(asked(wrong.measurements));
    const residuals = worst.residuals.map((each, i) => ({ ...each, studentised: i === 31 ? 9 : 0 }));
    expect(oneNumbers(wrong, { ...worst, residuals })).toEqual([]);
    expect(oneNumbers(wrong, null).map(({ cause }) => cause.kind)).toEqual(['travel per unit']);
  });
});

describe('inOtherUnit', () => {
  it('moves everything down range, with the range that a drop was aimed with, but no chronograph at the bow', () => {
    const drop: Measurement = {
      kind: 'drop',
      aimedWith: si(yards(20)),
      range: si(yards(40)),
      drop: si(0.4),
      sd: si(0.01),
      day: null,
    };
    const atBow: Measurement = {
      kind: 'speed',
      range: si(0.7),
      isAtBow: true,
      speed: si(85),
      sd: si(0.3),
      day: null,
    };
    const down: Measurement = { kind: 'speed', range: si(yards(30)), speed: si(80), sd: si(0.3), day: null };
    const ways = inOtherUnit(asked([drop, atBow, down]));
    expect(ways.map(({ cause }) => [cause.written, cause.isZeroToo])).toEqual([
      ['yd', false],
      ['yd', true],
    ]);
    const [first = expect.fail(), second = expect.fail()] = ways;
    expect(at(first.problem.measurements, 0)).toMatchObject({ aimedWith: 20, range: 40, drop: 0.4 });
    expect(at(first.problem.measurements, 1)).toEqual(atBow);
    expect(at(first.problem.measurements, 2)).toMatchObject({ range: 30 });
    expect([first, second].map(({ problem: { rig } }) => rig.zeroRange)).toEqual([18.288, 20]);
    const metres = inOtherUnit(asked(marksOf(inventedRig, [30, 50])));
    expect(at(at(metres, 0).problem.measurements, 0)).not.toHaveProperty('aimedWith');
    expect(metres.map(({ cause }) => cause.written)).toEqual(['m', 'm']);
    expect(at(at(metres, 0).problem.measurements, 0).range).toBeCloseTo(27.432, 9 /* m */);
  });
  it('of nothing has no ways', () => expect(inOtherUnit(asked([]))).toEqual([]));
});
