import { describe, expect, it } from 'vitest';
import {
  type BareOffset,
  endsOfTear,
  launchFrom,
  type Tear,
} from '../../../../src/advice/tuning/launch-from-paper.ts';
import { DEGREE, FOOT, INCH, YARD } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { referenceFlights as flights, startOf } from './reference-arrow.ts';

const TRUTH = startOf(0.5, 0.4);
const tear = (feet: number, count = 1): Tear => {
  const { right, high } = flights.tear(TRUTH, si(feet * FOOT), 'fletched');
  return { paper: si(feet * FOOT), nockRight: si(right), nockHigh: si(high), arrow: 'fletched', count };
};
/** Three and three arrows of 0.03 in/yd. */
const offset = (yards: number): BareOffset => {
  const { right, high } = flights.offset(TRUTH, si(yards * YARD));
  return {
    range: si(yards * YARD),
    right: si(right),
    high: si(high),
    sd: si(0.03 * INCH * yards * Math.sqrt(2 / 3)),
  };
};

/** An independent program's table: angle, deg, and rate, rad/s, each with its error, from a truth of 0.5 deg and 0.4 rad/s. */
const TABLE: readonly (readonly [
  string,
  readonly Tear[],
  readonly BareOffset[],
  number,
  number,
  number,
  number,
])[] = [
  ['one tear at 6 ft', [tear(6)], [], 0.38, 0.78, 0.47, 0.64],
  ['three tears at 6 ft', [tear(6, 3)], [], 0.39, 0.78, 0.47, 0.64],
  ['one at 4 ft, one at 12 ft', [tear(4), tear(12)], [], 0.47, 0.31, 0.41, 0.18],
  ['at 4, 5.6, 12, 13.6 ft', [4, 5.6, 12, 13.6].map((feet) => tear(feet)), [], 0.48, 0.24, 0.4, 0.12],
  ['bare at 20 yd', [], [offset(20)], 0.1, 1, 0.46, 0.23],
  ['bare at 30 yd', [], [offset(30)], 0.1, 1, 0.45, 0.16],
  ['tear at 6 ft and bare at 30 yd', [tear(6)], [offset(30)], 0.45, 0.33, 0.41, 0.12],
];

describe('the start from tears and bare shafts', () => {
  it.each(TABLE)('%s', (_, tears, offsets, angle, angleSd, rate, rateSd) => {
    const { start, sd } = launchFrom(flights, tears, offsets);
    expect(Math.abs(start.tailLeft / DEGREE - angle)).toBeLessThan(
      0.06 /* deg: half of the printed digit, and arrows that differ by some per cent */,
    );
    expect(Math.abs(sd.tailLeft / DEGREE - angleSd)).toBeLessThan(0.04 /* deg: as above */);
    expect(Math.abs(start.tailLeftRate - rate)).toBeLessThan(0.02 /* rad/s: as above */);
    expect(Math.abs(sd.tailLeftRate - rateSd)).toBeLessThan(0.02 /* rad/s: as above */);
    expect(Math.abs(start.tailUp / DEGREE)).toBeLessThan(0.1 /* deg: the truth has none */);
  });
  it('tears at one distance share their bending: twice the same tear says as much as one of two shots', () => {
    const twice = launchFrom(flights, [tear(6), tear(6)], []);
    const pooled = launchFrom(flights, [tear(6, 2)], []);
    expect(twice.sd.tailLeft).toBeCloseTo(pooled.sd.tailLeft, 12);
  });
  it('one tear decides nothing; two papers decide angle and rate', () => {
    expect(launchFrom(flights, [tear(6)], []).decided).toEqual([]);
    expect(launchFrom(flights, [tear(4), tear(12)], []).decided).toEqual([
      'tailLeft',
      'tailUp',
      'tailLeftRate',
      'tailRisingRate',
    ]);
  });
  it('the two ends of one tear: all angle 0.9 deg, all rate 0.8 rad/s (an independent program)', () => {
    const { ifAngle, ifRate } = endsOfTear(flights, { ...tear(6), nockRight: si(-0.4 * INCH) });
    expect(Math.abs(ifAngle / DEGREE - 0.94)).toBeLessThan(0.1 /* deg: 0.4 in over 0.425 in a degree */);
    expect(Math.abs(ifRate - 0.77)).toBeLessThan(0.08 /* rad/s: 0.4 in over 0.523 in */);
  });
});
