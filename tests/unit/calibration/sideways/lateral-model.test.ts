import { describe, expect, it } from 'vitest';
import { windFrom } from '../../../../src/atmosphere/wind.ts';
import { LATERAL_CAUSES, predictLateral } from '../../../../src/calibration/sideways/lateral-model.ts';
import { at } from '../../../../src/numerics/at.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { degrees, inches, spinningRig, withArrow } from '../../advice/invented-bow.ts';
import { inventedRig, yards } from '../../sight/invented-rig.ts';

const shotAt = (range: number, more: { turn?: 1 | -1; cant?: number } = {}) => ({
  range: si<'m'>(range),
  turn: more.turn ?? null,
  cant: si<'rad'>(more.cant ?? 0),
});
const one = (rig: Rig, range: number, more: { turn?: 1 | -1; cant?: number } = {}) =>
  at(predictLateral(rig, [shotAt(range, more)]), 0);
const slopeOf = (prediction: ReturnType<typeof one>, name: (typeof LATERAL_CAUSES)[number]) =>
  at(prediction.slopes, LATERAL_CAUSES.indexOf(name));

describe('predictLateral', () => {
  it('of no shots is nothing', () => expect(predictLateral(spinningRig, [])).toEqual([]));

  it('a pin a thousandth of the way to it to the left moves every hit a thousandth of its range', () => {
    for (const range of [20, 60, 100].map(yards)) {
      const slope = slopeOf(one(inventedRig, range), 'windage');
      expect(Math.abs(slope / range - 1)).toBeLessThan(
        5e-3 /* relative: the arrow leaves up to 5 deg upwards */,
      );
    }
  });

  it('an arrow beside the eye stays beside it, and beside the other way of a bow turned end for end', () => {
    expect(slopeOf(one(inventedRig, 40), 'offset')).toBe(1);
    expect(slopeOf(one(inventedRig, 40, { cant: Math.PI }), 'offset')).toBe(-1);
    // What the rig leans and what the bow was turned add up, here to an upright one.
    const leaning = { ...inventedRig, cant: si<'rad'>(degrees(20)) };
    expect(slopeOf(one(leaning, 40, { cant: -degrees(20) }), 'offset')).toBeCloseTo(1, 12 /* exact */);
  });

  it('a crosswind carries a point by w (T - X/v), T its time of flight', () => {
    // Of a flat path with CD 2.5: T = (exp kX - 1)/(k v); that is general ballistics, from memory.
    const k = (1.225 * 2.5 * Math.PI * 0.0062484 ** 2) / (8 * 0.0291595);
    const [v, range] = [85.344, yards(80)];
    const X = range - 0.98;
    const perCrosswind = Math.expm1(k * X) / (k * v) - X / v;
    const found = one(inventedRig, range).perCrosswind;
    expect(Math.abs(found / perCrosswind - 1)).toBeLessThan(0.01 /* relative: the path is a little longer */);
  });

  it('of a rig in a wind tells what a further metre a second would do: the same, as drift is straight in it', () => {
    const conditions = { ...inventedRig.conditions, wind: windFrom(si(3), si(-Math.PI / 2)) };
    const [calm, windy] = [one(inventedRig, yards(60)), one({ ...inventedRig, conditions }, yards(60))];
    expect(Math.abs(windy.perCrosswind / calm.perCrosswind - 1)).toBeLessThan(
      5e-3 /* relative: more air goes by */,
    );
  });

  describe('the part that spin makes', () => {
    it('is none of an arrow that does not spin, whichever way its vanes were said to turn', () => {
      for (const turn of [undefined, 1, -1] as const) {
        const more = turn === undefined ? {} : { turn };
        const { lateral, spin } = one(inventedRig, yards(80), more);
        expect(Math.abs(spin)).toBe(0);
        expect(lateral).toBe(one(inventedRig, yards(80)).lateral);
      }
    });

    it('is all that a bow held upright in still air puts aside, but for the windage that took it at the zero range', () => {
      const { lateral, spin } = one(spinningRig, yards(80));
      const zero = one(spinningRig, spinningRig.zeroRange);
      // The windage is a straight line from the eye.
      expect(Math.abs(zero.lateral)).toBeLessThan(1e-6 /* m: solved to that */);
      const straight = (zero.spin * yards(80)) / spinningRig.zeroRange;
      expect(Math.abs(spin - straight - lateral)).toBeLessThan(0.02 * Math.abs(spin));
      // 0.03 in left at 100 yd, as the tests of the spin say.
      expect(Math.abs(one(spinningRig, yards(100)).spin / -inches(0.03) - 1)).toBeLessThan(
        0.25 /* of a figure of one digit */,
      );
    });

    it('of a left helical goes as far to the other side', () => {
      const [right, left] = ([1, -1] as const).map((turn) => one(spinningRig, yards(80), { turn }));
      if (right === undefined || left === undefined) expect.fail();
      expect(right).toEqual(one(spinningRig, yards(80)));
      expect(Math.abs(left.spin / right.spin + 1)).toBeLessThan(
        1e-3 /* relative: the windage tilts it a hair */,
      );
      expect(Math.abs(left.lateral - right.lateral - (left.spin - right.spin))).toBeLessThan(1e-9 /* m */);
      const other = slopeOf(left, 'side_force') / slopeOf(right, 'side_force');
      expect(Math.abs(other + 1)).toBeLessThan(0.01 /* relative: the lift of gravity is no part of it */);
    });

    it('of a side force is for the whole of its ceiling, whatever share the rig has', () => {
      const shared = withArrow(spinningRig, { sideForce: 0.4 });
      const [none, some] = [one(spinningRig, yards(80)), one(shared, yards(80))];
      const slope = slopeOf(none, 'side_force');
      // 0.80 in left at 100 yd at the ceiling, from the tests of it; it grows with the square of the range or faster.
      expect(Math.abs(slopeOf(one(spinningRig, yards(100)), 'side_force') / -inches(0.8) - 1)).toBeLessThan(
        0.05 /* of a figure of two digits */,
      );
      expect(Math.abs(slopeOf(some, 'side_force') / slope - 1)).toBeLessThan(
        0.01 /* relative: the windage */,
      );
    });
  });
});
