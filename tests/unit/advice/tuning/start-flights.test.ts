import { describe, expect, it } from 'vitest';
import { CLEAN, type Disturbance } from '../../../../src/flight/rigid-launch.ts';
import { at } from '../../../../src/numerics/at.ts';
import { FOOT, INCH, YARD } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { referenceArrow, referenceBare, referenceFlights, startOf } from './reference-arrow.ts';

/** An independent program of six degrees of freedom, whose arrow has a slightly other inertia and drag build-up. */
const SHARE = 0.1;
const close = (found: number, inches: number, digit: number): void =>
  expect(Math.abs(found / INCH - inches)).toBeLessThan(SHARE * Math.abs(inches) + digit);

describe('tears: nock from point, inches right, paper ahead of the grip', () => {
  const FEET = [4, 6, 8, 10, 12, 15];
  const tears = (disturbance: Disturbance) =>
    FEET.map((feet) => referenceFlights.tear(disturbance, si(feet * FOOT), 'fletched'));
  it.each([
    ['a degree tail left', startOf(1, 0), [-0.471, -0.425, -0.366, -0.295, -0.216, -0.089]],
    ['1 rad/s tail going left', startOf(0, 1), [-0.352, -0.523, -0.668, -0.783, -0.863, -0.916]],
  ])('%s', (_, disturbance, expected) => {
    for (const [i, { right }] of tears(disturbance).entries()) close(right, at(expected, i), 0.015 /* in */);
  });
  it('a clean arrow tears a little low: its path falls while the shaft goes through', () => {
    const expected = [-0.039, -0.06, -0.079, -0.095, -0.107, -0.119];
    for (const [i, { high }] of tears(CLEAN).entries()) close(high, at(expected, i), 0.005 /* in */);
  });
});

describe('bare shaft less fletched arrow at the point, inches', () => {
  const TABLE: readonly (readonly [yards: number, clean: number, ...right: readonly number[]])[] = [
    [10, 0.04, 0.17, 0.35, 0.1, 0.2, 0.44, 0.03, 0.39],
    [20, 0.25, 0.34, 0.82, 0.56, 1.32, 3.23, 0.78, 1.91],
    [30, 0.78, 0.92, 2.02, 1.82, 4.25, 9.42, 2.87, 5.5],
  ];
  const STARTS = [
    startOf(1, 0),
    startOf(2, 0),
    startOf(0, 0.25),
    startOf(0, 0.5),
    startOf(0, 1),
    startOf(-1, 0.5),
    startOf(1, 0.5),
  ];
  it.each(TABLE)('at %d yd', (yards, clean, ...right) => {
    close(referenceFlights.offset(CLEAN, si(yards * YARD)).high, clean, 0.02 /* in */);
    for (const [i, disturbance] of STARTS.entries())
      close(referenceFlights.offset(disturbance, si(yards * YARD)).right, at(right, i), 0.05 /* in */);
  });
  it('a tail to the other side is the mirrored offset, but for the spin of the fletched arrow', () => {
    const [left, right] = [startOf(0, 0.5), startOf(0, -0.5)].map(
      (s) => referenceFlights.offset(s, si(30 * YARD)).right,
    );
    expect(Math.abs((left ?? 0) + (right ?? 1)) / INCH).toBeLessThan(
      0.1 /* in: precession of a spinning arrow */,
    );
  });
  it('keeps mass, balance and inertia, and loses the lift of the vanes', () => {
    expect(referenceBare.flying.mass).toBe(referenceArrow.flying.mass);
    expect(referenceBare.flying.balance).toBe(referenceArrow.flying.balance);
    expect(
      (referenceBare.flying.attitude?.transverseInertia ?? 0) /
        (referenceArrow.flying.attitude?.transverseInertia ?? 1),
    ).toBeCloseTo(1, 2);
    expect(referenceBare.flying.attitude?.normalSlope).toBeCloseTo(2, 12);
    expect(referenceBare.flying.attitude?.firstMoment).toBeGreaterThan(0);
  });
  it('refuses a shaft that flies too far aslant', () =>
    expect(() => referenceFlights.offset(startOf(0, 6), si(30 * YARD))).toThrow(/angle of the bare shaft/));
});
