import { describe, expect, it } from 'vitest';
import { torqueNull } from '../../../../src/advice/tuning/torque-null.ts';
import type { TorqueShots } from '../../../../src/advice/tuning/torque-settings.ts';
import { INCH, YARD } from '../../../../src/quantities/exact.ts';
import { type Metres, si } from '../../../../src/quantities/quantity.ts';

const inches = (value: number): Metres => si(value * INCH);
const shots = (
  extension: number,
  left: readonly number[],
  right: readonly number[],
  yards = 50,
): TorqueShots => ({
  extension: inches(extension),
  range: si(yards * YARD),
  left: left.map(inches),
  right: right.map(inches),
  turned: null,
});
/** Peep to pin 33 in with the pin 5.75 in ahead of the grip; 0.03 in/yd an arrow. */
const bow = { gripToPeep: inches(27.25), arrowSd: (0.03 * INCH) / YARD };
const WORKED = [
  shots(6.5, [1.47, 3.27, 2.94], [-2.35, -4.54, -1.62]),
  shots(4.5, [-1.98, -3.49, -3.72], [0.52, 1.23, 3.51]),
];
const inInches = (value: number | undefined): number => (value ?? Number.NaN) / INCH;

describe('torque null: a worked case by an independent program', () => {
  const found = torqueNull({ shots: WORKED, ...bow });
  const half = 0.0005; // in: of the last digit that it prints
  it('shifts and their errors', () => {
    const [far, near] = found.settings;
    expect(Math.abs(inInches(far?.shift) + 5.397)).toBeLessThan(half);
    expect(Math.abs(inInches(near?.shift) - 4.817)).toBeLessThan(half);
    expect(Math.abs(inInches(far?.shiftSd) - 1.238)).toBeLessThan(half);
    expect(Math.abs(inInches(near?.shiftSd) - 1.213)).toBeLessThan(half);
    expect([far?.moves, near?.moves]).toEqual(['against', 'with']);
  });
  it('null, its error and its interval', () => {
    expect(Math.abs(inInches(found.null?.extension) - 5.413)).toBeLessThan(half);
    expect(Math.abs(inInches(found.null?.sd) - 0.169)).toBeLessThan(half);
    expect(Math.abs(inInches(found.null?.interval?.[0]) - 5.016)).toBeLessThan(half);
    expect(Math.abs(inInches(found.null?.interval?.[1]) - 5.808)).toBeLessThan(half);
    expect(found.verdict).toBe('move');
    expect(Math.abs(inInches(found.move ?? undefined) - 0.913)).toBeLessThan(half);
  });
  it('torque and launch share', () => {
    expect(found.torque).toBeCloseTo(0.1116, 4);
    expect(found.launchShare).toBeCloseTo(0.1657, 4);
  });
});

describe('torque null', () => {
  it('a datum of the extension shifted shifts the null alike, exactly to rounding', () => {
    const { null: found } = torqueNull({ shots: WORKED, ...bow });
    const moved = WORKED.map((each) => ({ ...each, extension: si<'m'>(each.extension + inches(0.7)) }));
    const { null: shifted } = torqueNull({ ...bow, shots: moved, gripToPeep: inches(26.55) });
    expect(inInches(shifted?.extension)).toBeCloseTo(inInches(found?.extension) + 0.7, 9);
    expect(inInches(shifted?.interval?.[1])).toBeCloseTo(inInches(found?.interval?.[1]) + 0.7, 9);
  });
  it('mirrored shots give the same null', () => {
    const mirrored = WORKED.map((each) => ({
      ...each,
      left: each.right.map((hit) => si<'m'>(-hit)),
      right: each.left.map((hit) => si<'m'>(-hit)),
    }));
    expect(torqueNull({ shots: mirrored, ...bow }).null?.extension).toBeCloseTo(
      torqueNull({ shots: WORKED, ...bow }).null?.extension ?? Number.NaN,
      14,
    );
  });
  it('practice: hits 6 in apart closed to 1 in by an inch of sight leave some 0.2 in (common practice, no source)', () => {
    const practice = [shots(6.75, [3, 3, 3], [-3, -3, -3]), shots(5.75, [0.5, 0.5, 0.5], [-0.5, -0.5, -0.5])];
    const found = torqueNull({ shots: practice, ...bow });
    // 1/(1/33 + (1/6 of the step)/5 ...): computed independently
    expect(Math.abs(5.75 - inInches(found.null?.extension) - 0.193)).toBeLessThan(
      0.001 /* in, the printed digits */,
    );
    expect(found.verdict).toBe('done');
    expect(found.move).toBe(0);
  });
  it('one extension: an inch towards the null and no farther', () => {
    const found = torqueNull({ shots: [shots(5.75, [3, 3.2, 2.8], [-3, -3.1, -2.9])], ...bow });
    expect(found.verdict).toBe('first move');
    expect(inInches(found.move ?? undefined)).toBeCloseTo(-1, 12);
    expect(found.null?.method).toBe('one extension');
    expect(found.null?.interval).toBeNull();
    expect(found.torque).toBe(0.11);
  });
  it('extensions a millimetre apart settle nothing', () => {
    const close = [shots(5.5, [3, 3.2, 2.8], [-3, -3.1, -2.9]), shots(5.54, [3, 3.2, 2.8], [-3, -3.1, -2.9])];
    const found = torqueNull({ shots: close, ...bow });
    expect([found.verdict, found.null, found.move]).toEqual(['not settled', null, null]);
  });
  it('left and right mixed up over 6 in is a contradiction', () => {
    const swapped = [shots(2, [6, 6.2, 5.8], [-6, -6.3, -5.7]), shots(8, [-6, -6.2, -5.8], [6, 6.3, 5.7])];
    expect(torqueNull({ shots: swapped, ...bow }).verdict).toBe('contradiction');
  });
  it('the same extension twice is pooled', () => {
    const parts = [
      shots(6.5, [1.47], [-2.35, -4.54]),
      shots(4.5, [-1.98, -3.49, -3.72], [0.52, 1.23, 3.51]),
      shots(6.5, [3.27, 2.94], [-1.62]),
    ];
    const found = torqueNull({ shots: parts, ...bow });
    expect(found.settings).toHaveLength(2);
    expect(inInches(found.null?.extension)).toBeCloseTo(5.413, 3);
    expect(inInches(found.now.extension)).toBe(6.5);
  });
  it('a third extension far off the line is told', () => {
    expect(torqueNull({ shots: [...WORKED, shots(5.5, [20, 20, 21], [22, 22, 23])], ...bow }).offLine).toBe(
      false,
    );
    expect(torqueNull({ shots: [...WORKED, shots(5.5, [-6, -6, -6], [6, 6, 6])], ...bow }).offLine).toBe(
      true,
    );
  });
  it('an ordinary group grows by 5 % from 6 in of test torque at 50 yd, 1.4 % from 3 in, 0.2 % from 1 in', () => {
    const growth = (shift: number): number =>
      torqueNull({
        shots: [
          shots(
            5.75,
            [shift / 2, shift / 2 + 1.5, shift / 2 - 1.5],
            [-shift / 2, -shift / 2 - 1.5, -shift / 2 + 1.5],
          ),
        ],
        ...bow,
      }).now.groupGrowth;
    expect(growth(6)).toBeCloseTo(0.054, 3);
    expect(growth(3)).toBeCloseTo(0.014, 3);
    expect(growth(1)).toBeCloseTo(0.0015, 3);
  });
});
