import { describe, expect, it } from 'vitest';
import { flyer } from '../../../src/flight/trajectory.ts';
import { length } from '../../../src/numerics/vector.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { launchAngle, launchThrough } from '../../../src/sight/geometry.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { NO_PIN } from '../../../src/sight/no-pin.ts';
import { readingAt, travelAt } from '../../../src/sight/scale.ts';
import { impact, pinForHit } from '../../../src/sight/zero.ts';
import { conditionsOf, pointArrow, spinningArrow } from '../flight/point-arrow.ts';
import { draglessElevation } from './dragless-elevation.ts';
import { dragless, inventedRig, yards } from './invented-rig.ts';

const everyYard = Array.from({ length: 91 }, (_, i) => yards(10 + i));

describe('launchThrough', () => {
  const launch = (down: number, windage: number, cant: number, lean = 0) =>
    launchThrough({ ...inventedRig.geometry, lean: si(lean) }, { down, windage }, si(cant), si(85));

  it('raises the arrow by exactly the angle of the pin below the eye', () => {
    expect(Math.abs(launchAngle(launch(0.03, 0, 0)) - Math.atan(0.03 / 0.8382))).toBeLessThan(
      1e-15 /* rad */,
    );
  });
  it('starts free flight below the eye by the peep height, square to the arrow', () => {
    const { position } = launch(0, 0, 0);
    expect(position).toEqual([0.98, -0.11684, 0]);
  });
  it('a pin to the right sends the arrow left', () =>
    expect(launch(0, 0.001, 0).velocity[2]).toBeLessThan(0));
  it('a bow turned clockwise sends a raised arrow right and starts it on the left', () => {
    expect(launch(0.03, 0, 0.05).velocity[2]).toBeGreaterThan(0);
    expect(launch(0.03, 0, 0.05).position[2]).toBeLessThan(0);
  });
  it('travel leaned clockwise moves the pin left as it goes down, and the arrow right', () => {
    expect(launch(0.03, 0, 0, 0.02).velocity[2]).toBeGreaterThan(0);
  });
  it('keeps speed and distances whatever the angles', () => {
    const { position, velocity } = launch(0.05, -0.01, 0.3, 0.1);
    expect(Math.abs(length(velocity) - 85)).toBeLessThan(1e-12 /* m/s */);
    expect(Math.abs(length(position) - Math.hypot(0.98, 0.11684))).toBeLessThan(1e-15 /* m */);
  });
});

describe('marksFor', () => {
  const { marks, zero } = marksFor(inventedRig, everyYard);

  it('without drag agrees with the closed form to 1e-7 m of travel at every yard', () => {
    for (const mark of marksFor(dragless, everyYard).marks) {
      const elevation = draglessElevation(mark.range);
      expect(Math.abs(mark.launchAngle - elevation)).toBeLessThan(1e-8 /* rad */);
      const travel = 0.8382 * (Math.tan(elevation) - Math.tan(draglessElevation(yards(20))));
      expect(Math.abs(mark.travel - travel)).toBeLessThan(1e-8 /* m: a thousandth of the tape's 0.02 mm */);
    }
  });

  it('a flight of its own through each mark hits within 1e-7 m, though the marks share six', () => {
    const flight = flyer(inventedRig.conditions);
    for (const mark of marks) {
      const hit = impact(
        flight,
        inventedRig,
        { down: zero.down + mark.travel, windage: zero.windage },
        mark.range,
      );
      expect(Math.abs(hit.height)).toBeLessThan(1e-7 /* m */);
      expect(Math.abs(hit.lateral - mark.lateral)).toBeLessThan(1e-7 /* m */);
    }
  });

  it('spreads its shared flights wide enough for close range, slow bows and steep pins too', () => {
    const slow = {
      ...inventedRig,
      launchSpeed: si<'m/s'>(45),
      conditions: conditionsOf(pointArrow(0.025, 0.009, 2.6)),
    };
    const ranges = [1.5, 2, 3, 5, 10, 40, 90];
    const table = marksFor(slow, ranges);
    const flight = flyer(slow.conditions);
    for (const mark of table.marks) {
      const hit = impact(flight, slow, { down: table.zero.down + mark.travel, windage: 0 }, mark.range);
      expect(Math.abs(hit.height)).toBeLessThan(5e-6 /* m: pins spread over 0.1 m share five flights */);
    }
  });

  it('grows with range beyond the turning of the near field', () => {
    const far = marks.filter(({ range }) => range > yards(20)).map(({ travel }) => travel as number);
    expect(far).toEqual(far.toSorted((a, b) => a - b));
  });

  it('turns back at close range: hitting at 4 yd asks for about the 50 yd mark (common practice, no source)', () => {
    const fifty = marks.find(({ range }) => range === yards(50));
    expect((fifty?.nearCrossing ?? 0) / 0.9144).toBeGreaterThan(3);
    expect((fifty?.nearCrossing ?? 0) / 0.9144).toBeLessThan(4.7);
    const [close] = marksFor(inventedRig, [fifty?.nearCrossing ?? 0]).marks;
    expect(Math.abs((close?.travel ?? 0) - (fifty?.travel ?? 0))).toBeLessThan(
      1e-6 /* m: the crossing is found to 1e-4 m */,
    );
  });

  it('a mark on the rising part of the path has no nearer crossing, and its highest point is the hit', () => {
    const [mark] = marksFor(inventedRig, [3]).marks;
    expect(mark?.nearCrossing).toBeNull();
    expect(mark?.highest.range).toBe(3);
    expect(Math.abs(mark?.highest.height ?? 1)).toBeLessThan(1e-7 /* m */);
  });

  it('an arrow that starts above the eye only falls: highest where free flight begins, and never at the eye before', () => {
    const above = { ...dragless, geometry: { ...dragless.geometry, peepHeight: si<'m'>(-0.1) } };
    const {
      marks: [mark],
      paths,
    } = marksFor(above, [5]);
    expect(mark?.rising).toBe(false);
    expect(mark?.nearCrossing).toBeNull();
    expect(mark?.highest.range).toBe(paths.start);
    expect(mark?.highest.height).toBeCloseTo(0.08, 2);
  });

  it('a reading is that of the zero and what the travel is in units; none without a scale', () => {
    const ranges = [yards(20), yards(70)];
    const [zeroMark, far] = marksFor(inventedRig, ranges).marks;
    expect(zeroMark?.reading).toBeCloseTo(12.4, 6);
    expect(far?.reading).toBeCloseTo(12.4 + (far?.travel ?? Number.NaN) / 0.001, 12);
    expect(marksFor({ ...inventedRig, scale: null }, ranges).marks.map(({ reading }) => reading)).toEqual([
      null,
      null,
    ]);
  });

  it('the highest point of the 60 yd path is where its slope is nought', () => {
    const mark = marks.find(({ range }) => range === yards(60));
    const flight = flyer(inventedRig.conditions);
    const at = (range: number) =>
      impact(flight, inventedRig, { down: zero.down + (mark?.travel ?? 0), windage: 0 }, range).height;
    const top = mark?.highest ?? expect.fail('no mark');
    expect(Math.abs(at(top.range) - top.height)).toBeLessThan(1e-7 /* m */);
    expect(at(top.range - 0.5)).toBeLessThan(top.height);
    expect(at(top.range + 0.5)).toBeLessThan(top.height);
  });

  it('tells how far a unit of travel moves the hit: about range over the peep-to-pin distance', () => {
    const mark = marks.find(({ range }) => range === yards(60));
    const ratio = (mark?.heightPerTravel ?? 0) / (yards(60) / 0.8382);
    expect(Math.abs(ratio - 1)).toBeLessThan(
      0.02 /* relative: the start lies ahead of the eye and the path is curved */,
    );
  });

  it('the arrow touches the sight when the pin comes down to it', () => {
    const low = { ...inventedRig, geometry: { ...inventedRig.geometry, peepHeight: si<'m'>(0.04) } };
    const clearances = marksFor(low, everyYard).marks.map(({ clearance }) => clearance as number);
    expect(clearances[0]).toBeGreaterThan(0);
    expect(clearances.at(-1)).toBeLessThan(0);
  });

  it('an arrow that falls short is an error, not a mark', () => {
    const feeble = { ...inventedRig, launchSpeed: si<'m/s'>(25) };
    expect(() => marksFor(feeble, [yards(20), yards(120)])).toThrow(
      expect.objectContaining({ code: 'not-converged', reason: NO_PIN }),
    );
  });

  it.each([[[0.5]], [[0.5, 30]], [[30, 0.98]]])('refuses a range inside the bow: %j', (ranges) =>
    expect(() => marksFor(inventedRig, ranges)).toThrow(/leaves the bow/),
  );
});

describe('sideways', () => {
  const right = { ...inventedRig, conditions: conditionsOf(spinningArrow) };

  it('with the windage set at 20 yd a right helical is left beyond and the zero is a hit', () => {
    const { marks } = marksFor(right, [yards(20), yards(60), yards(100)]);
    expect(Math.abs(marks[0]?.lateral ?? 1)).toBeLessThan(1e-7 /* m */);
    expect(marks[1]?.lateral).toBeLessThan(0);
    expect(marks[2]?.lateral).toBeLessThan(marks[1]?.lateral ?? 0);
  });

  it('a bow canted 1 deg to the right misses right by h sin c beyond the zero, to 2 % (flat-fire geometry)', () => {
    const flight = flyer(inventedRig.conditions);
    const pin = pinForHit(inventedRig, yards(60), null, flight);
    const canted = { ...inventedRig, cant: si<'rad'>(Math.PI / 180) };
    const hit = impact(flight, canted, pin, yards(60));
    // The drop below the launch line seen from the start, plus the start's own shift to the left.
    const launch = launchThrough(inventedRig.geometry, pin, si(0), inventedRig.launchSpeed);
    const rise =
      launch.position[1] + ((yards(60) - launch.position[0]) * launch.velocity[1]) / launch.velocity[0];
    expect(Math.abs(hit.lateral / (rise * Math.sin(Math.PI / 180)) - 1)).toBeLessThan(0.02 /* relative */);
    expect(hit.height).toBeLessThan(0);
  });
});

it('a reading and its travel are inverse, whichever way the scale runs', () => {
  for (const direction of [1, -1] as const) {
    const scale = { travelPerUnit: 0.0007, direction, atZero: 31 };
    expect(Math.abs(travelAt(scale, readingAt(scale, 0.0123)) - 0.0123)).toBeLessThan(1e-15 /* m */);
    expect(Math.sign(readingAt(scale, 0.01) - 31)).toBe(direction);
  }
});
