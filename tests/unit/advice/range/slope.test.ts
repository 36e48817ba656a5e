import { describe, expect, it } from 'vitest';
import { thirdAxisCant, thirdAxisMisses } from '../../../../src/advice/lean/third-axis.ts';
import { highestPin, rangeOfPin } from '../../../../src/advice/range/level-range.ts';
import { onSlope, slopeMarks } from '../../../../src/advice/range/slope.ts';
import { flyer } from '../../../../src/flight/trajectory.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { impact } from '../../../../src/sight/zero.ts';
import { dragless, inventedRig, yards } from '../../sight/invented-rig.ts';
import { courseRanges, degrees, inches, mirrored, spinningRig } from '../invented-bow.ts';

const slopes = [-40, -20, -5, 5, 20, 40].map(degrees);

describe('slopeMarks', () => {
  it('without drag, from the eye: R cos t/(1 - tan a tan t), the vacuum parabola on a slope', () => {
    const fromEye = {
      ...dragless,
      geometry: { ...dragless.geometry, peepHeight: si<'m'>(0), freeFlight: si<'m'>(0) },
    };
    for (const { range, slope, markRange } of slopeMarks(fromEye, courseRanges, slopes)) {
      // R = 2 v^2 sin a cos(t + a)/(g cos^2 t), solved for a by sin(2a + t) - sin t = g R cos^2 t/v^2.
      const right = (9.80665 * range * Math.cos(slope) ** 2) / 85.344 ** 2;
      const angle = (Math.asin(right + Math.sin(slope)) - slope) / 2;
      const exact = (range * Math.cos(slope)) / (1 - Math.tan(angle) * Math.tan(slope));
      expect(Math.abs((markRange ?? 0) - exact)).toBeLessThan(
        1e-4 /* m: hits are found to 1e-7 m of height */,
      );
    }
  });

  const found = slopeMarks(inventedRig, courseRanges, slopes);

  it('the mark it says hits', () => {
    const { zero } = marksFor(inventedRig, courseRanges);
    for (const { range, slope, travel, markRange } of found) {
      const tilted = onSlope(inventedRig, slope);
      const pin = { down: zero.down + travel, windage: zero.windage };
      const hit = impact(flyer(tilted.conditions), tilted, pin, range);
      expect(Math.abs(hit.height)).toBeLessThan(1e-6 /* m */);
      if (markRange === null) continue;
      const [level] = marksFor(inventedRig, [markRange]).marks;
      expect(Math.abs((level?.travel ?? 0) - travel)).toBeLessThan(1e-8 /* m of travel */);
    }
  });

  it('on the level the mark is the range', () => {
    for (const { range, markRange, missByCosine, travel } of slopeMarks(inventedRig, courseRanges, [0])) {
      expect(Math.abs((markRange ?? 0) - range)).toBeLessThan(1e-3 /* m */);
      expect(Math.abs(missByCosine)).toBeLessThan(1e-6 /* m */);
      if (range > yards(20)) expect(travel).toBeGreaterThan(0);
    }
  });

  it('from 60 yd on is further than the cosine says uphill and nearer downhill, so that the cosine hits low and high', () => {
    const far = found.filter(({ range }) => range >= yards(60));
    expect(far.length).toBeGreaterThan(20);
    for (const { slope, markRange, cosineRange, missByCosine } of far) {
      expect(Math.sign((markRange ?? 0) - cosineRange)).toBe(Math.sign(slope));
      expect(Math.sign(missByCosine)).toBe(-Math.sign(slope));
    }
  });

  it('near by it is nearer than the cosine says either way: the eye is above the arrow', () => {
    for (const { markRange, cosineRange, missByCosine } of slopeMarks(
      inventedRig,
      [yards(30)],
      [-25, 25].map(degrees),
    )) {
      expect(markRange).toBeLessThan(cosineRange);
      expect(missByCosine).toBeGreaterThan(0);
    }
  });

  it('a steep shot with the level mark of its range goes high, up or down', () => {
    for (const { slope, missByRange } of found)
      if (Math.abs(slope) > degrees(10)) expect(missByRange).toBeGreaterThan(0);
  });

  it('where even the highest mark is too low a pin it says so', () => {
    const [steep] = slopeMarks(inventedRig, [yards(14)], [degrees(-60)]);
    expect(steep?.markRange).toBeNull();
    expect(steep?.travel).toBeLessThan(0.001 /* m */);
  });

  it('there it says how far high the highest mark hits, and holds nothing where a mark hits', () => {
    const flight = flyer(inventedRig.conditions);
    const { zero } = marksFor(inventedRig, [yards(20)]);
    const down = highestPin(inventedRig, zero.windage, flight);
    const heights = Array.from({ length: 200 }, (_, i) => 3 + i * 0.2).map(
      (range) => impact(flight, inventedRig, { down, windage: zero.windage }, range).height,
    );
    // The path of the highest mark touches the line of sight from below, and 0.2 m apart the parabola is flat to 1e-5 m.
    expect(Math.abs(Math.max(...heights))).toBeLessThan(1e-5 /* m */);
    const [steep] = slopeMarks(inventedRig, [yards(20)], [degrees(-60)]);
    const tilted = onSlope(inventedRig, degrees(-60));
    const hit = impact(flyer(tilted.conditions), tilted, { down, windage: zero.windage }, yards(20));
    expect(steep?.markRange).toBeNull();
    expect(steep?.hold).toBeGreaterThan(0);
    expect(Math.abs((steep?.hold ?? 0) - hit.height)).toBeLessThan(1e-6 /* m */);
    for (const { markRange, hold } of found) if (markRange !== null) expect(hold).toBe(0);
  });

  it('a slider that ends below the mark is set to its end, and the shot held off by what that hits high', () => {
    const rig = { ...inventedRig, zeroRange: si<'m'>(yards(30)) };
    const [free] = slopeMarks(rig, [yards(30)], [degrees(-25)]);
    if (free === undefined || free.markRange === null) throw new Error('a free slider has a mark there');
    const { zero } = marksFor(rig, [yards(30)]);
    const up = -free.travel;
    expect(up).toBeGreaterThan(1e-4 /* m above the zero, or nothing is tried */);
    const told = (aboveZero: number) =>
      slopeMarks(rig, [yards(30)], [degrees(-25)], { aboveZero: si<'m'>(aboveZero) })[0];
    expect(told(up)).toEqual(free);
    const held = told(up - 1e-4);
    const tilted = onSlope(rig, degrees(-25));
    const pin = { down: zero.down - up + 1e-4, windage: zero.windage };
    expect(held?.markRange).toBeNull();
    expect(held?.hold).toBeCloseTo(
      impact(flyer(tilted.conditions), tilted, pin, yards(30)).height,
      9 /* m */,
    );
    // A pin lowered by 0.1 mm raises the hit by that times range over peep to pin.
    const byHand = (1e-4 * yards(30)) / rig.geometry.peepToPin;
    expect(Math.abs((held?.hold ?? 0) / byHand - 1)).toBeLessThan(
      0.03 /* the eye is not at the arrow, and the path bends */,
    );
  });

  it('without drag the highest mark is for √(2 v² h/g), the peep height fallen', () => {
    const { geometry, conditions } = dragless;
    const fromBow = { ...dragless, geometry: { ...geometry, freeFlight: si<'m'>(0) } };
    const flight = flyer(conditions);
    const touches = 85.344 * Math.sqrt((2 * geometry.peepHeight) / conditions.freeFall);
    const [mark] = marksFor(fromBow, [touches]).marks;
    const { zero } = marksFor(fromBow, [touches]);
    const down = highestPin(fromBow, zero.windage, flight);
    expect(Math.abs(down - zero.down - (mark?.travel ?? 0))).toBeLessThan(
      2e-6 /* m: launch and eye are not on one upright line, which moves the range by less than a percent */,
    );
  });
});

describe('rangeOfPin', () => {
  it('is the inverse of the marks, whatever the guess', () => {
    const { marks, zero } = marksFor(inventedRig, courseRanges);
    const flight = flyer(inventedRig.conditions);
    for (const { range, travel } of marks)
      for (const guess of [10, 200]) {
        const pin = { down: zero.down + travel, windage: zero.windage };
        expect(Math.abs((rangeOfPin(inventedRig, flight, pin, guess) ?? 0) - range)).toBeLessThan(
          1e-3 /* m */,
        );
      }
  });
});

describe('third axis', () => {
  it('cant: sin c = tan e tan t, and nothing on the level', () => {
    expect(thirdAxisCant(degrees(2), 0)).toBe(0);
    // e = 45 deg on a slope of 30 deg: sin c = tan 30 deg.
    expect(Math.abs(Math.sin(thirdAxisCant(Math.PI / 4, Math.PI / 6)) - 1 / Math.sqrt(3))).toBeLessThan(
      1e-15 /* rounding */,
    );
  });

  it('the level is horizontal at that cant', () => {
    const [e, t] = [degrees(3), degrees(35)];
    const c = thirdAxisCant(e, t);
    // Right end ahead: r cos e + x sin e, r = (0, -sin c, cos c); up is (sin t, cos t, 0).
    const height = Math.sin(e) * Math.sin(t) + Math.cos(e) * -Math.sin(c) * Math.cos(t);
    expect(Math.abs(height)).toBeLessThan(1e-15 /* of the level's length, rounding */);
  });

  it('to first order the bow is out of plumb by the error times sin(slope)', () => {
    const [e, t] = [degrees(0.5), degrees(30)];
    const dip = Math.asin(Math.sin(thirdAxisCant(e, t)) * Math.cos(t));
    expect(Math.abs(dip / (e * Math.sin(t)) - 1)).toBeLessThan(
      1e-4 /* relative: the second order of the error */,
    );
  });

  it('no cant centres the bubble of a level that points along a steep slope', () =>
    expect(() => thirdAxisCant(degrees(80), degrees(40))).toThrow(/bubble/));

  const misses = thirdAxisMisses(inventedRig, degrees(1), [yards(50)], [degrees(-30), degrees(30)]);
  it('right end ahead: right uphill, left downhill', () => {
    expect(misses[1]?.lateral).toBeGreaterThan(0);
    expect(misses[0]?.lateral).toBeLessThan(0);
  });

  it('1 deg costs about half an inch at 50 yd on 30 deg: the cant of 0.58 deg times the drop', () => {
    expect(misses[1]?.lateral).toBeGreaterThan(inches(0.45));
    expect(misses[1]?.lateral).toBeLessThan(inches(0.55));
  });

  it('mirrors exactly', () => {
    const ours = thirdAxisMisses(spinningRig, degrees(2), courseRanges, [degrees(25)]);
    const theirs = thirdAxisMisses(mirrored(spinningRig), -degrees(2), courseRanges, [degrees(25)]);
    for (const [i, { lateral, vertical }] of ours.entries()) {
      expect(theirs[i]?.lateral).toBe(-lateral);
      expect(theirs[i]?.vertical).toBe(vertical);
    }
  });
});
