import { describe, expect, it } from 'vitest';
import { slopeMarks } from '../../../src/advice/range/slope.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { pinAtZero, pinForHit } from '../../../src/sight/zero.ts';
import { inventedRig, yards } from './invented-rig.ts';

const DEGREE = Math.PI / 180;
const onHill = (rig: Rig, slope: number): Rig => ({
  ...rig,
  conditions: { ...rig.conditions, slope: si(slope * DEGREE) },
});

describe('a sight zeroed on the level and shot on a slope', () => {
  it.each([20, 45, -30])('has the zero and the marks of the level zero, at %d deg', (slope) => {
    const range = yards(60);
    const [mark] = marksFor(onHill(inventedRig, slope), [range]).marks;
    const [told] = slopeMarks(inventedRig, [range], [slope * DEGREE]);
    expect(Math.abs((mark?.travel ?? Number.NaN) - (told?.travel ?? Number.NaN))).toBeLessThan(1e-8 /* m */);
    expect(pinAtZero(onHill(inventedRig, slope), 0)).toEqual(
      pinForHit(inventedRig, inventedRig.zeroRange, 0),
    );
  });

  it('zeroed at 20 deg instead, hits 1.4 in elsewhere with the 60 yd mark read from its own zero', () => {
    const range = yards(60);
    const hill = onHill(inventedRig, 20);
    const travel = (rig: Rig): number => marksFor(rig, [range]).marks[0]?.travel ?? Number.NaN;
    const apart = travel(hill) - travel({ ...hill, zeroSlope: hill.conditions.slope });
    const perTravel = marksFor(hill, [range]).marks[0]?.heightPerTravel ?? Number.NaN;
    // 0.55 mm of travel and 1.4 in by the audit's own program for a bow like this one; its printed digits.
    expect(Math.abs(Math.abs(apart) * 1e3 - 0.55)).toBeLessThan(0.03 /* mm */);
    expect(Math.abs(Math.abs(apart * perTravel) / 0.0254 - 1.4)).toBeLessThan(0.1 /* in */);
  });

  it('a level shot with a sight zeroed uphill has its zero where the uphill bow has it', () => {
    const zeroedUp = { ...inventedRig, zeroSlope: si<'rad'>(0.3) };
    const uphill = onHill(inventedRig, 0.3 / DEGREE);
    expect(pinAtZero(zeroedUp, null)).toEqual(pinForHit(uphill, uphill.zeroRange, null));
  });
});
