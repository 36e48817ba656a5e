import { expect, it } from 'vitest';
import { liftingSurfaces } from '../../../../src/arrow/lift/lifting.ts';
import {
  centreOfPressure,
  finRingSlope,
  finSlope,
  liftMoments,
} from '../../../../src/arrow/lift/normal-force.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { fieldPoint, INCH, ridgeCampParts } from '../ridge-camp-arrow.ts';

const vane = { rootChord: 0.05, tipChord: 0.05, height: 0.01, sweep: 0, rootRadius: 0.003 };

it('a very long low fin has the slope of slender wings, a very tall one that of a plane section', () => {
  // Per fin area: pi s / c for s << c (slender wing), 2 pi for s >> c (plane section).
  const low = { ...vane, height: 1e-5 };
  expect(finSlope(low, low.height * low.rootChord) / (Math.PI * (low.height / low.rootChord))).toBeCloseTo(
    1,
    3,
  );
  const tall = { ...vane, height: 50 };
  expect(finSlope(tall, tall.height * tall.rootChord) / (2 * Math.PI)).toBeCloseTo(1, 2);
});

it('three fins have one and a half times one fin, more with the body', () => {
  // 1.5 x (1 + 3/13) of one
  expect(finRingSlope(vane, 3, 1e-4) / finSlope(vane, 1e-4)).toBeCloseTo(1.5 * (1 + 3 / 13), 12);
});

it('six fins crowd each other', () => {
  expect(finRingSlope(vane, 6, 1e-4) / finRingSlope(vane, 3, 1e-4)).toBeCloseTo(2 * 0.913, 12);
});

// What crowding leaves, as Niskanen, 2013, tabulates it.
it.each([
  [1, 1],
  [2, 1],
  [3, 1],
  [4, 1],
  [5, 0.948],
  [6, 0.913],
  [7, 0.854],
  [8, 0.81],
])('of %d fins each lifts %d of what it would among few', (count, left) =>
  expect(finRingSlope(vane, count, 1e-4) / count / (finRingSlope(vane, 3, 1e-4) / 3)).toBeCloseTo(left, 12),
);

it('a fin swept back lifts as its height over the length of its middle line says', () => {
  // Middle line 12 mm up and 16 mm back: cos 0.6. s^2 = 1.44e-4, A = 12 x 40 = 480 mm2: ratio 0.144/(0.48 x 0.6) = 0.5.
  const swept = { rootChord: 0.04, tipChord: 0.04, height: 0.012, sweep: 0.016, rootRadius: 0.003 };
  const byHand = (2 * Math.PI * 1.44) / (1 + Math.sqrt(1.25)); // on 1e-4 m2
  expect(finSlope(swept, 1e-4)).toBeCloseTo(byHand, 12);
});

it.each([-1, 0, 2.5, 9, Number.NaN])('finRingSlope of %d fins throws', (count) =>
  expect(() => finRingSlope(vane, count, 1e-4)).toThrow(DomainError),
);

it('moments are sums of slope times place', () => {
  const lifts = [
    { slope: 2, place: 0.3 },
    { slope: 28, place: -0.4 },
  ];
  const [sum, first, second] = liftMoments(lifts);
  expect(sum).toBe(30);
  expect(first).toBeCloseTo(0.6 - 11.2, 12);
  expect(second).toBeCloseTo(0.18 + 4.48, 12);
  expect(centreOfPressure(lifts)).toBeCloseTo(-10.6 / 30, 12);
});

it('without lift there is no centre of pressure', () => {
  expect(() => centreOfPressure([])).toThrow(DomainError);
  expect(() => centreOfPressure([{ slope: -1, place: 0.3 }])).toThrow(DomainError);
});

it("the example's vanes push 0.915 in behind their front, its nose a third of the point ahead of the shaft", () => {
  // 0.4 x 3.9/3 + 7.11/18 = 0.52 + 0.395; front at 1 + 2.1 in from the groove.
  const { vanes, nose, blades } = liftingSurfaces(ridgeCampParts);
  expect((vanes?.place ?? Number.NaN) / INCH).toBeCloseTo(3.1 - 0.915, 6);
  expect(nose.place / INCH).toBeCloseTo(28.75 + 1.3 / 3, 6);
  expect(blades).toBeNull();
});

it('fixed blades lift ahead of the shaft', () => {
  const { blades } = liftingSurfaces({
    ...ridgeCampParts,
    point: {
      ...fieldPoint,
      shape: 'fixed_blade',
      blades: { count: 3, length: si(INCH), cuttingDiameter: si(1.1 * INCH), thickness: si(0.03 * INCH) },
    },
  });
  // A triangle 1 in long: sweep/3 + length/6 = 1/2 in behind its front tip.
  expect((blades?.place ?? Number.NaN) / INCH).toBeCloseTo(28.75 + 0.5, 6);
  expect(blades?.fin.height).toBeCloseTo(((1.1 - 0.246) / 2) * INCH, 9);
});
