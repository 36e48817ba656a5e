import { describe, expect, it } from 'vitest';
import type { DaySetting } from '../../../src/calibration/day-setting.ts';
import { USUAL_DAY } from '../../../src/calibration/days.ts';
import type { Measurement, PencilMark, ShotMark } from '../../../src/calibration/measurement.ts';
import { besideOf } from '../../../src/calibration/parameters.ts';
import { changeShifts, dayShifts, observed, predict } from '../../../src/calibration/prediction.ts';
import { slopeAtHit } from '../../../src/calibration/range-error.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';

const readingFor = (rig: Rig, range: number): number =>
  marksFor(rig, [range]).marks[0]?.reading ?? Number.NaN;
const markAt = (range: number, more: Partial<ShotMark> = {}): ShotMark => ({
  kind: 'mark',
  range: si(range),
  reading: readingFor(inventedRig, range),
  vertical: 0,
  sd: si(0.01),
  cant: si(0),
  day: null,
  ...more,
});
const speedAt = (range: number): Measurement => ({
  kind: 'speed',
  range: si(range),
  speed: si(80),
  sd: si(0.3),
  day: null,
});

/** Drag over twice the mass, 1/m, of CD 2.5 by hand. */
const K = (1.225 * 2.5 * Math.PI * 0.0062484 ** 2) / (8 * 0.0291595);
/** How far a flat path falls below its launch line after `s` metres: (g/v²) (exp 2ks - 1 - 2ks)/4k². */
const fallOf = (v: number, k: number, s: number): number =>
  ((9.80665 / v ** 2) * (Math.expm1(2 * k * s) - 2 * k * s)) / (4 * k * k);

describe('changeShifts', () => {
  const range = yards(60);
  const s = range - 0.98;
  const shiftOf = (cause: 0 | 1 | 2): number => {
    const usual = { speed: 1.5, sight: 1.5e-3, drag: 0.1 };
    return at(at(changeShifts(inventedRig, [markAt(range)], usual, besideOf({})), 0), cause);
  };

  it('a faster launch falls less, by the closed form of a flat path', () => {
    const expected = fallOf(85.344, K, s) - fallOf(86.844, K, s);
    expect(Math.abs(shiftOf(0) / expected - 1)).toBeLessThan(0.02 /* relative: the path is not quite flat */);
  });
  it('more drag falls more', () => {
    const expected = fallOf(85.344, K, s) - fallOf(85.344, 1.1 * K, s);
    expect(Math.abs(shiftOf(2) / expected - 1)).toBeLessThan(0.03 /* relative: the path is not quite flat */);
  });
  it('a peep slipped up with the pin where it was points the bow higher: s (R/E - 1)', () => {
    const expected = 1.5e-3 * (range / 0.8382 - 1);
    expect(Math.abs(shiftOf(1) / expected - 1)).toBeLessThan(
      0.01 /* relative: the line to the pin points down */,
    );
  });
});

describe('dayShifts', () => {
  const setting = (change: { speedRatioSd?: number; dragSd?: number }): DaySetting => {
    const { conditions, geometry, cant } = inventedRig;
    return {
      air: conditions.air,
      wind: conditions.wind,
      freeFall: conditions.freeFall,
      cant,
      warmer: 0,
      arrow: {
        flying: conditions.arrow,
        freeFlight: geometry.freeFlight,
        speedRatio: 1,
        speedRatioSd: change.speedRatioSd ?? 0,
        dragSd: change.dragSd ?? 0,
      },
    };
  };
  const shiftsOf = (own: DaySetting | undefined, days = USUAL_DAY): readonly number[] =>
    dayShifts(inventedRig, [markAt(yards(60), own === undefined ? {} : { setting: own })], days)[0] ?? [];

  it('of nothing is nothing', () => expect(dayShifts(inventedRig, [], USUAL_DAY)).toEqual([]));
  it('of the own arrow by another name are the own', () =>
    expect(shiftsOf(setting({}))).toEqual(shiftsOf(undefined)));
  it('of an arrow whose speed is known to 1 % are those of a day that is as much less sure', () => {
    const speed = Math.hypot(USUAL_DAY.speed, 0.01 * 85.344);
    expect(shiftsOf(setting({ speedRatioSd: 0.01 }))).toEqual(shiftsOf(undefined, { ...USUAL_DAY, speed }));
  });
  it('of an arrow whose drag is known to 5 % are those of air known as badly', () => {
    const density = Math.hypot(USUAL_DAY.density, 0.05);
    expect(shiftsOf(setting({ dragSd: 0.05 }))).toEqual(shiftsOf(undefined, { ...USUAL_DAY, density }));
  });
});

describe('predict', () => {
  it('of the marks of the rig itself is a hit', () => {
    for (const height of predict(
      inventedRig,
      [20, 40, 80].map(yards).map((range) => markAt(range)),
    ))
      expect(Math.abs(height)).toBeLessThan(1e-6 /* m: pins are solved to that */);
  });

  it('of a line on a strip is that of the reading at the same place of the pin', () => {
    const reading = readingFor(inventedRig, yards(50));
    const pencil: PencilMark = {
      ...markAt(yards(50)),
      kind: 'pencil',
      onTape: 1.5e-3 * (reading - 12.4),
      lineAt: null,
    };
    const [height] = predict(inventedRig, [pencil], besideOf({ tape_ratio: 1.5 }));
    expect(Math.abs(Number(height))).toBeLessThan(1e-6 /* m */);
  });

  it('of a bow held over lowers the hit as the cosine of all its lean, the pin standing as it did', () => {
    const held = { ...inventedRig, cant: si<'rad'>(0.1) };
    const at60 = (cant: number) => at(predict(held, [markAt(yards(60), { cant: si(cant) })]), 0);
    // The pin stands as far down as its reading says, from the place where this bow is zeroed.
    const [{ down } = expect.fail()] = [marksFor(held, [yards(60)])].map(({ zero }) => ({
      down: zero.down + 1e-3 * (readingFor(inventedRig, yards(60)) - 12.4),
    }));
    // From the arrow at the peep, 4.6 in below the eye.
    const lever = (yards(60) / 0.8382) * down - 0.11684;
    const expected = lever * (Math.cos(0) - Math.cos(0.2));
    expect(Math.abs((at60(-0.1) - at60(0.1)) / expected - 1)).toBeLessThan(
      0.02 /* relative: to second order */,
    );
  });

  it('of a drop is a hit at the range that was aimed with, and the fall beyond it', () => {
    const drop = (range: number): Measurement => ({
      kind: 'drop',
      aimedWith: si(yards(30)),
      range: si(range),
      drop: si(0.3),
      sd: si(0.01),
      day: null,
    });
    const [there, beyond] = predict(inventedRig, [drop(yards(30)), drop(yards(31))]);
    expect(Math.abs(Number(there))).toBeLessThan(1e-6 /* m */);
    const slope = (Number(beyond) - Number(there)) / yards(1);
    // The slope in the middle of that yard, by the closed form of range-error.test.ts.
    expect(Math.abs(slope / slopeAtHit(inventedRig, yards(30)) - 1)).toBeLessThan(
      0.05 /* relative: half a yard on */,
    );
    expect(observed(drop(30))).toBe(-0.3);
  });

  it('of a speed is the launch speed at the bow, and falls as exp(-kx) from there', () => {
    const [atBow, near, far] = predict(inventedRig, [0.3, 0.98, yards(50)].map(speedAt));
    expect([atBow, near]).toEqual([85.344, 85.344]);
    const expected = 85.344 * Math.exp(-K * (yards(50) - 0.98));
    expect(Math.abs(Number(far) / expected - 1)).toBeLessThan(1e-3 /* relative: it also rises and falls */);
    expect(observed(speedAt(20))).toBe(80);
    expect(observed(markAt(20, { vertical: 0.04 }))).toBe(0.04);
  });
});
