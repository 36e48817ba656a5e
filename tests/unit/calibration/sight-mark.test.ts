import { describe, expect, it } from 'vitest';
import type { PencilMark, ShotMark } from '../../../src/calibration/measurement.ts';
import {
  isSightMark,
  travelOf,
  withWritten,
  writtenOf,
  writtenPer,
} from '../../../src/calibration/sight-mark.ts';
import { isAtBow, unitsOf } from '../../../src/calibration/units-of.ts';
import { si } from '../../../src/quantities/quantity.ts';

const group = { range: si<'m'>(40), vertical: 0, sd: si<'m'>(0.02), cant: si<'rad'>(0), day: null };
const mark: ShotMark = { ...group, kind: 'mark', reading: 20.4 };
const pencil: PencilMark = { ...group, kind: 'pencil', onTape: 0.012, lineAt: null };
/** Two millimetres for a number; 12.4 at the zero range. */
const down = { travelPerUnit: 0.002, direction: 1, atZero: 12.4 } as const;
const up = { ...down, direction: -1 } as const;

describe('a mark', () => {
  it('of a scale is so many numbers from the zero range, down or up', () => {
    expect(travelOf(down, mark, 3)).toBeCloseTo(0.016, 12 /* 8 numbers of 2 mm */);
    expect(travelOf(up, mark, 3)).toBeCloseTo(-0.016, 12);
  });
  it('on a strip that goes 1.5 times as far as the pin is at two thirds of its place on it', () =>
    expect(travelOf(down, pencil, 1.5)).toBeCloseTo(0.008, 12 /* m */));
  it('on a strip whose line was drawn at a reading counts from there', () => {
    expect(travelOf(down, { ...pencil, lineAt: 13.4 }, 1.5)).toBeCloseTo(0.002 + 0.008, 12 /* m */);
    expect(travelOf(up, { ...pencil, lineAt: 13.4 }, 1.5)).toBeCloseTo(-0.002 + 0.008, 12 /* m */);
  });
  it('a metre of travel is 500 numbers of 2 mm, or as many metres on the strip as it goes farther', () => {
    expect(writtenPer(down, mark, 1.5)).toBeCloseTo(500, 9);
    expect(writtenPer(up, mark, 1.5)).toBeCloseTo(-500, 9);
    expect(writtenPer(down, pencil, 1.5)).toBe(1.5);
  });
  it('is written as a reading or a place on the strip', () => {
    expect([mark, pencil].map(writtenOf)).toEqual([20.4, 0.012]);
    expect(withWritten(mark, 21)).toEqual({ ...mark, reading: 21 });
    expect(withWritten(pencil, 0.02)).toEqual({ ...pencil, onTape: 0.02 });
  });
  it('is no chronograph reading and no drop', () => {
    expect([mark, pencil].map(isSightMark)).toEqual([true, true]);
    const speed = {
      kind: 'speed',
      range: si<'m'>(1),
      speed: si<'m/s'>(80),
      sd: si<'m/s'>(1),
      day: null,
    } as const;
    const drop = {
      ...speed,
      kind: 'drop',
      aimedWith: si<'m'>(20),
      drop: si<'m'>(1),
      sd: si<'m'>(0.1),
    } as const;
    expect([speed, drop].map(isSightMark)).toEqual([false, false]);
  });
});

describe('the units that ranges may be of', () => {
  const at = (...ranges: readonly number[]) => ranges.map((range) => ({ range: si<'m'>(range) }));
  it('are both where all are whole in both, or there are none', () => {
    // 1250 yd are 1143 m.
    expect(unitsOf(at(1143))).toEqual(['yd', 'm']);
    expect(unitsOf([])).toEqual(['yd', 'm']);
  });
  it('are both where some are whole in one and some in the other', () => {
    expect(unitsOf(at(18.288, 50))).toEqual(['yd', 'm']);
    expect(unitsOf(at(20, 20.5))).toEqual(['yd', 'm']);
  });
  it('say nothing by a chronograph at the bow', () => {
    const atBow = { range: si<'m'>(0.7), isAtBow: true } as const;
    expect(isAtBow(atBow)).toBe(true);
    expect(at(20).map(isAtBow)).toEqual([false]);
    expect(unitsOf([atBow, ...at(20, 50)])).toEqual(['m']);
    expect(unitsOf([atBow, ...at(18.288)])).toEqual(['yd']);
  });
  it('forgive what a division leaves, and no more', () => {
    expect(unitsOf(at(20 + 1e-9, 20 - 1e-9))).toEqual(['m']);
    expect(unitsOf(at(20.001))).toEqual(['yd', 'm']);
  });
});
