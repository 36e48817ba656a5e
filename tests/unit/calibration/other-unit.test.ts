import { describe, expect, it } from 'vitest';
import { agreementOf } from '../../../src/calibration/agreement.ts';
import { calibrate } from '../../../src/calibration/fit.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { inOtherUnit } from '../../../src/calibration/one-number.ts';
import { isUnitOpen, otherUnitOf } from '../../../src/calibration/other-unit.ts';
import type { Priors } from '../../../src/calibration/parameters.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { priors, problem, shotMarks } from './invented-problem.ts';

const known: Priors = { ...priors, scale_offset: { value: 0, sd: 0.3 } };
/** Marks of the bow at ranges in m, written down as so many yards; each known to `spread` of its range, and `off` of that off. */
const asYards = (metres: readonly number[], spread: number, off = 0): readonly Measurement[] =>
  shotMarks(
    metres.map((range) => range / 0.9144),
    spread,
    (i) => (i % 2 === 0 ? off : -off),
  ).map((mark) => ({ ...mark, range: si(yards(mark.range)) }));
const fitted = (marks: readonly Measurement[], of: Priors = known) =>
  calibrate({ ...problem(marks), priors: of });
const askedOf = (marks: readonly Measurement[], of: Priors = known) => {
  const calibration = fitted(marks, of);
  return otherUnitOf({ calibration, agreement: agreementOf(calibration) });
};
/** By how much chi-squared is lower with the ranges in the other unit, fitted anew; the better of the ways. */
const gainOf = (marks: readonly Measurement[]): number => {
  const own = fitted(marks);
  const others = inOtherUnit(own.problem).map((one) => calibrate(one.problem).chiSquared);
  return own.chiSquared - Math.min(...others);
};
/** The spread at which a value that falls as the groups get larger comes to `level`. */
function spreadAt(level: number, valueAt: (spread: number) => number): number {
  let [lo, hi] = [5e-4, 8e-3];
  for (let i = 0; i < 9; i++) {
    const middle = Math.sqrt(lo * hi);
    if (valueAt(middle) > level) lo = middle;
    else hi = middle;
  }
  return Math.sqrt(lo * hi);
}

describe('ranges that may have been written in the other unit', () => {
  const metres = [30, 40, 50];

  it.each([0, 1.2])(
    'are told where chi-squared would be lower by more than 4, fitted anew: groups %d errors off',
    (off) => {
      const spread = spreadAt(4, (one) => gainOf(asYards(metres, one, off)));
      expect(askedOf(asYards(metres, 1.02 * spread, off))).toBeNull();
      const found = askedOf(asYards(metres, 0.98 * spread, off));
      expect(found?.cause).toMatchObject({ kind: 'other unit', written: 'yd' });
    },
  );

  it('by the better of the two ways, with the zero range and without', () => {
    const marks = asYards(metres, 5e-4);
    const found = askedOf(marks) ?? expect.fail();
    const ways = inOtherUnit(fitted(marks).problem).map(({ cause, problem: one }) => ({
      cause,
      chiSquared: calibrate(one).chiSquared,
    }));
    const [best] = ways.toSorted((a, b) => a.chiSquared - b.chiSquared);
    expect(found.cause).toEqual(best?.cause);
    expect(found.agreement.chiSquared).toBe(best?.chiSquared);
  });

  it('by the way with the zero range where that was in metres too', () => {
    const rig = { ...inventedRig, zeroRange: si<'m'>(20) };
    const marks = marksFor(rig, metres).marks.map(
      ({ range, reading }): Measurement => ({
        kind: 'mark',
        range: si(yards(range)),
        reading: reading ?? Number.NaN,
        vertical: 0,
        sd: si(5e-4 * range),
        cant: si(0),
        day: null,
      }),
    );
    expect(askedOf(marks)?.cause).toEqual({ kind: 'other unit', written: 'yd', isZeroToo: true });
  });

  it('are not where they agree as written', () => expect(askedOf(shotMarks([30, 40, 50], 1e-3))).toBeNull());

  it('are not where a unit of the scale is itself left to the marks', () => {
    const open: Priors = { ...known, scale_ratio: { value: 1, sd: 10, yardstick: 0.2 } };
    // Groups of no size would tell it even then.
    const sharp = asYards([20, 30, 40, 50, 60], 2e-5);
    expect(fitted(sharp, open).chiSquared).toBeGreaterThan(20);
    expect(askedOf(sharp, open)).toBeNull();
    expect(isUnitOpen(fitted(shotMarks([30, 40, 50], 1e-4), open))).toBe(true);
    // Nor those of a strip that goes as far as the marks say.
    const lines = shotMarks([30, 50], 1e-4).map((mark): Measurement => {
      if (mark.kind !== 'mark') return mark;
      const { reading, ...group } = mark;
      return { ...group, kind: 'pencil', onTape: (reading - 12.75) * 1.007e-3 * 1.5, lineAt: null };
    });
    const strip = { ...known, tape_ratio: { value: 1.5, sd: 15, yardstick: 0.3 } };
    expect(isUnitOpen(fitted(lines, strip))).toBe(true);
    const measured = { ...known, tape_ratio: { value: 1.5, sd: 0.005 } };
    expect(isUnitOpen(fitted(lines, measured))).toBe(false);
    // Readings of a known scale beside such lines tell it again.
    expect(isUnitOpen(fitted([...lines, ...shotMarks([30, 40, 50], 1e-4)], strip))).toBe(false);
  });
});

describe('the unit of the ranges', () => {
  it('is open where chi-squared in the other one would be less than 4 higher', () => {
    const marks = (spread: number) => shotMarks([30, 50], spread);
    const lossAt = (spread: number): number => -gainOf(marks(spread));
    const spread = spreadAt(4, lossAt);
    // What the straight model leaves of chi-squared 4 is a tenth of it.
    expect(isUnitOpen(fitted(marks(1.1 * spread)))).toBe(true);
    expect(isUnitOpen(fitted(marks(0.9 * spread)))).toBe(false);
  });

  it('is told by chronographs down range that are one measurement each, and open without marks', () => {
    const atBow: Measurement = {
      kind: 'speed',
      range: si(0.7),
      isAtBow: true,
      speed: si(85.3),
      sd: si(0.3),
      day: null,
    };
    expect(isUnitOpen(fitted([atBow]))).toBe(true);
    expect(isUnitOpen(fitted([]))).toBe(false);
  });
});
