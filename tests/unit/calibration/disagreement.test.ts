import { describe, expect, it } from 'vitest';
import { type Disagreement, disagreementOf } from '../../../src/calibration/disagreement.ts';
import { type Calibration, type CalibrationProblem, calibrate } from '../../../src/calibration/fit.ts';
import { leftOut } from '../../../src/calibration/left-out.ts';
import { digitsSwapped, wrongMark } from '../../../src/calibration/likely-slip.ts';
import { backwards } from '../../../src/calibration/mark-order.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import type { Measurement, ShotMark } from '../../../src/calibration/measurement.ts';
import { withParameters } from '../../../src/calibration/parameters.ts';
import { unitsOf } from '../../../src/calibration/units-of.ts';
import { unseenSlip } from '../../../src/calibration/unseen-slip.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { problem, shotMarks, truth } from './invented-problem.ts';

const SPREAD = 0.0007; // m of the group's middle per m of range: 1 in at 40 yd

const marksAt = (ranges: readonly number[]): readonly ShotMark[] =>
  shotMarks(ranges, SPREAD).filter((one): one is ShotMark => one.kind === 'mark');
const withReading = (marks: readonly ShotMark[], index: number, reading: number): readonly ShotMark[] =>
  marks.map((mark, i) => (i === index ? { ...mark, reading } : mark));
const found = (
  measurements: readonly Measurement[],
  changed: Partial<CalibrationProblem> = {},
): Disagreement => {
  const disagreement = disagreementOf(calibrate({ ...problem(measurements), ...changed }));
  if (disagreement === null) expect.fail('these agree');
  return disagreement;
};
const kinds = ({ explanations }: Disagreement) => explanations.map(({ explanation }) => explanation.kind);

describe('disagreementOf', () => {
  const good = marksAt([20, 30, 40, 60, 80]);

  it('of marks that agree is nothing', () => expect(disagreementOf(calibrate(problem(good)))).toBeNull());

  it.each([0, 1, 2, 3, 4])('names mark %i alone when its reading is five numbers off', (index) => {
    const one = found(withReading(good, index, at(good, index).reading + 5));
    expect(one.isContradiction).toBe(true);
    expect(one.explanations).toHaveLength(1);
    expect(one.explanations[0]?.explanation).toMatchObject({ kind: 'mark', index });
    expect(one.rest?.problem.measurements).toHaveLength(4);
  });

  it('of two marks, either of which may be wrong, lists both', () => {
    const [near, far] = [at(good, 0), at(good, 3)];
    const one = found([near, { ...far, reading: far.reading + 5 }]);
    expect(kinds(one).filter((kind) => kind === 'mark')).toHaveLength(2);
    expect(one.rest).toBeNull();
  });

  it('of three marks that no mark left out but another travel per unit explains says that one first', () => {
    const { scale } = inventedRig;
    if (scale === null) expect.fail();
    // A wheel geared so that the pin travels 0.672 mm for a number of 1 mm: the readings are 1.488 times as far apart.
    const geared = marksAt([20, 40, 60]).map((mark) => ({
      ...mark,
      reading: scale.atZero + (mark.reading - scale.atZero) * 1.488,
    }));
    const one = found(geared);
    expect(kinds(one)[0]).toBe('travel per unit');
    expect(kinds(one)).not.toContain('mark');
    const [explained] = one.explanations;
    const cause = explained?.explanation;
    // The invented truth has a scale 1.007 times that of the file.
    if (cause?.kind !== 'travel per unit') expect.fail();
    expect(Math.abs(cause.value / (0.001007 / 1.488) - 1)).toBeLessThan(
      0.05 /* relative: drag and peep height, two standard errors off, move it by half of that each */,
    );
    expect(one.rest).toBeNull();
  });

  it('names two of seven marks together', () => {
    const seven = marksAt([20, 30, 40, 50, 60, 70, 80]);
    const one = found(
      withReading(withReading(seven, 2, at(seven, 2).reading + 8), 5, at(seven, 5).reading - 6),
    );
    expect(one.together.map(({ range }) => Math.round(range / yards(1))).toSorted()).toEqual([40, 70]);
  });

  describe('of a hundred marks fits again', () => {
    const many = marksAt(Array.from({ length: 100 }, (_, i) => 20 + (i % 60)));
    const triesWith = (wrong: readonly number[]): readonly number[] => {
      const slipped = wrong.reduce((marks, i) => withReading(marks, i, at(many, i).reading + 3), many);
      const all = calibrate(problem(slipped));
      return leftOut(all.problem, all).map(({ index }) => index);
    };
    it('the one that stands out alone', () => expect(triesWith([50])).toEqual([50]));
    it('two that stand out alike', () => expect(triesWith([50, 51]).toSorted()).toEqual([50, 51]));
  });

  const many = (count: number) => marksAt(Array.from({ length: count }, (_, i) => 20 + (i % 70)));

  it('of as many marks as a file may have finds the one that is wrong, and in seconds', () => {
    const start = process.cpuUsage();
    const marks = many(300);
    expect(kinds(found(withReading(marks, 123, at(marks, 123).reading + 6)))).toEqual(['mark']);
    const { user, system } = process.cpuUsage(start);
    expect((user + system) / 1e6).toBeLessThan(10 /* s: the longest that anybody waits for a sentence */);
  });
  it('of many marks finds another travel per unit', () => {
    const { scale } = inventedRig;
    if (scale === null) expect.fail();
    const geared = many(100).map((mark) => ({ ...mark, reading: 2 * mark.reading - scale.atZero }));
    expect(kinds(found(geared))).toEqual(['travel per unit']);
  });
  it('of many marks that nothing explains finds nothing', () =>
    expect(kinds(found(many(100).map((mark, i) => ({ ...mark, reading: 5 + ((i * 37) % 40) }))))).toEqual(
      [],
    ));
});

describe('ranges', () => {
  it('were written in the unit in which they are whole', () => {
    expect(unitsOf(marksAt([20, 35]))).toEqual(['yd']);
    expect(unitsOf([{ range: si(18) }, { range: si(50) }])).toEqual(['m']);
    expect(unitsOf([{ range: si(18.3) }])).toEqual(['yd', 'm']);
  });
});

describe('backwards', () => {
  it('lets marks turn back inside the range of the highest mark, and names the pair that runs back beyond', () => {
    // Of a bow of 280 ft/s and 4.6 in the highest mark is that of 14 yd: 5 yd has a lower pin than 10 yd.
    const marks = marksAt([5, 10, 20, 40, 60]);
    expect(at(marks, 0).reading).toBeGreaterThan(at(marks, 1).reading);
    expect(backwards(problem(marks))).toEqual([]);
    const slipped = withReading(marks, 4, 14);
    const [pair, ...others] = backwards(problem(slipped));
    expect(others).toEqual([]);
    expect(pair).toMatchObject({ near: slipped[3], far: slipped[4] });
  });
});

describe('wrongMark', () => {
  const good = marksAt([20, 30, 40, 50, 60]);
  const slipOf = (index: number, reading: number) => {
    const wrong = withReading(good, index, reading);
    const rest = calibrate(problem(good.filter((_, i) => i !== index)));
    return wrongMark(rest, at(wrong, index), wrong);
  };

  it('says what the mark would read, and that its digits were swapped', () => {
    const right = Number(at(good, 4).reading.toFixed(1));
    const swapped = 39;
    expect(right).toBe(30.9);
    const one = slipOf(4, swapped);
    expect(Math.abs(one.wouldRead - right)).toBeLessThan(one.wouldReadSd);
    expect(one.slip).toEqual({ kind: 'digits swapped', meant: right });
  });
  it('says which range the reading belongs to', () =>
    expect(slipOf(4, at(good, 2).reading).slip).toMatchObject({
      kind: 'reading of another range',
      range: at(good, 2).range,
    }));
  describe('of a group 6 in low at 60 yd says', () => {
    const low = -6 * 0.0254; // m
    const real = withParameters(inventedRig, truth);
    const { scale } = real;
    const [sixty] = marksFor(real, [yards(60)]).marks;
    if (scale === null || sixty?.reading == null) throw new Error('the invented sight has a scale');
    // The setting that puts the middle of the group there, to first order in its height.
    const reading = sixty.reading + (scale.direction * low) / sixty.heightPerTravel / scale.travelPerUnit;
    const group = (vertical: number) => {
      const wrong = good.map((mark, i) => (i === 4 ? { ...mark, reading, vertical } : mark));
      const rest = calibrate(problem(good.filter((_, i) => i !== 4)));
      return wrongMark(rest, at(wrong, 4), wrong);
    };
    it('nothing of its height where that is right', () =>
      expect(Math.abs(group(low).wouldRead - reading)).toBeLessThan(group(low).wouldReadSd));
    it('that it was written with the other sign', () => {
      const { slip } = group(-low);
      expect(slip?.kind).toBe('height turned');
      if (slip?.kind === 'height turned') expect(slip.meant).toBeCloseTo(low, 12 /* exact */);
    });
    it('that its centimetres were written as inches, and the other way round', () => {
      expect(group(low * 2.54).slip).toMatchObject({ kind: 'height in another unit', really: 'cm' });
      expect(group(low / 2.54).slip).toMatchObject({ kind: 'height in another unit', really: 'in' });
    });
  });
  it('says that the target stood in metres', () => {
    const [, , , , sixty] = good;
    const [metres] = shotMarks([60 / 0.9144], SPREAD);
    if (sixty === undefined || metres?.kind !== 'mark') expect.fail();
    expect(slipOf(4, metres.reading).slip).toEqual({ kind: 'other unit', unit: 'm' });
  });
});

describe('digitsSwapped', () => {
  it('swaps each two neighbours, across a decimal point too', () => {
    expect(digitsSwapped(72)).toContain(27);
    expect(digitsSwapped(50.6)).toEqual(expect.arrayContaining([5.6, 56]));
    expect(digitsSwapped(44)).not.toContain(44);
  });
  it('knows the nought that nobody writes: 3.9 of 30.9, and 39 of 30.9', () => {
    expect(digitsSwapped(3.9)).toContain(30.9);
    expect(digitsSwapped(39)).toContain(30.9);
  });
});

describe('unseenSlip', () => {
  const far = si<'m'>(yards(100));
  const fitted = calibrate(problem(marksAt([20, 40, 60])));
  const slip = unseenSlip(fitted, far);
  const readingAt = ({ rig }: Calibration): number => marksFor(rig, [far]).marks[0]?.reading ?? Number.NaN;

  it('is what a fit of marks with that slip says: three standard errors off, and moving the far mark so, to 5 %', () => {
    if (slip === null || slip.numbers === null) expect.fail();
    const { numbers } = slip;
    const wrong = marksAt([20, 40, 60]).map((mark) =>
      mark.range === slip.range ? { ...mark, reading: mark.reading + numbers } : mark,
    );
    const off = calibrate(problem(wrong));
    const judged = off.residuals.find(({ measurement }) => measurement.range === slip.range)?.studentised;
    const was = fitted.residuals.find(({ measurement }) => measurement.range === slip.range)?.studentised;
    if (judged === undefined || was === undefined) expect.fail();
    expect(Math.abs(Math.abs(judged - was) / 3 - 1)).toBeLessThan(0.05 /* relative: taken as straight */);
    const { heightPerUnit } = at(markUncertainty(fitted, marksFor(fitted.rig, [far])), 0);
    const moved = Math.abs((readingAt(off) - readingAt(fitted)) * heightPerUnit);
    expect(Math.abs(slip.shift / moved - 1)).toBeLessThan(0.05 /* relative: taken as straight */);
  });
  it('of marks without a scale is nothing', () => expect(unseenSlip(calibrate(problem([])), far)).toBeNull());
});
