import { describe, expect, it } from 'vitest';
import { asAtHome, calibrationElsewhere, carriedTo } from '../../../src/calibration/elsewhere.ts';
import { calibrate } from '../../../src/calibration/fit.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import { namedValues, PARAMETERS, type Priors, withParameters } from '../../../src/calibration/parameters.ts';
import { at } from '../../../src/numerics/at.ts';
import { times } from '../../../src/numerics/linear-algebra.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { withSightOf } from '../../../src/sight/zero.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { problem, shotMarks } from './invented-problem.ts';

const ranges = [30, 80].map(yards);
/** Nothing is unsure but what is named. */
const sureBut = (unsure: Partial<Record<keyof Priors, number>>): Priors => {
  const of = (name: (typeof PARAMETERS)[number], value: number) => ({ value, sd: unsure[name] ?? 1e-9 });
  const five = {
    launch_speed: of('launch_speed', inventedRig.launchSpeed),
    drag_scale: of('drag_scale', 1),
    peep_height: of('peep_height', inventedRig.geometry.peepHeight),
    scale_ratio: of('scale_ratio', 1),
    scale_offset: of('scale_offset', 0),
  };
  return unsure.tape_ratio === undefined
    ? five
    : { ...five, tape_ratio: { value: 1.5, sd: unsure.tape_ratio } };
};
const sdsOf = (rig: Rig, priors: Priors) => {
  const fit = calibrate({ ...problem([]), rig, priors });
  const table = marksFor(fit.rig, ranges);
  return markUncertainty(fit, table).map((sure, i) => ({ ...sure, travel: at(table.marks, i).travel }));
};
const bare: Rig = { ...inventedRig, scale: null };

describe('a mark is as unsure as', () => {
  it('its travel is by a share of the travel per unit, in numbers, on the sight and on the target', () => {
    for (const { readingSd, travelSd, onTargetSd, heightPerUnit, travel } of sdsOf(
      inventedRig,
      sureBut({ scale_ratio: 0.01 }),
    )) {
      expect(Math.abs(readingSd / ((0.01 * travel) / 1e-3) - 1)).toBeLessThan(
        1e-4 /* relative: the rest is sure */,
      );
      expect(Math.abs(travelSd / (0.01 * travel) - 1)).toBeLessThan(1e-4 /* relative */);
      expect(onTargetSd).toBeCloseTo(readingSd * Math.abs(heightPerUnit), 12);
    }
  });

  it('the same of a scale that the fit found to be a quarter coarser', () => {
    const coarser = { ...sureBut({}), scale_ratio: { value: 1.25, sd: 0.0125 } };
    for (const { travelSd, travel } of sdsOf(inventedRig, coarser))
      expect(Math.abs(travelSd / (0.01 * travel) - 1)).toBeLessThan(1e-4 /* relative */);
  });

  it('its scale is by its place: every reading alike', () => {
    for (const { readingSd } of sdsOf(inventedRig, sureBut({ scale_offset: 0.3 })))
      expect(Math.abs(readingSd / 0.3 - 1)).toBeLessThan(1e-4 /* relative */);
  });

  it('its travel is by the way to the peep, of a sight without numbers', () => {
    for (const { readingSd, travelSd, travel } of sdsOf(bare, sureBut({ scale_ratio: 0.01 }))) {
      expect(Math.abs(travelSd / (0.01 * travel) - 1)).toBeLessThan(1e-4 /* relative */);
      expect(readingSd).toBe(travelSd);
    }
  });

  it('its strip is by how far that goes, of a sight without numbers, the way to the peep being fitted with it', () => {
    for (const { travelSd, travel } of sdsOf(bare, sureBut({ tape_ratio: 0.03, scale_ratio: 0.01 })))
      expect(Math.abs(travelSd / ((0.03 / 1.5) * travel) - 1)).toBeLessThan(1e-4 /* relative */);
  });

  it('its numbers alone where a sight has both', () => {
    for (const { readingSd, travel } of sdsOf(inventedRig, sureBut({ tape_ratio: 0.03, scale_ratio: 0.01 })))
      expect(Math.abs(readingSd / ((0.01 * travel) / 1e-3) - 1)).toBeLessThan(1e-4 /* relative */);
  });

  it('is not by the warmth: marks are for the air in which the speed was measured', () => {
    const priors = { ...sureBut({ scale_offset: 0.3 }), speed_per_degree: { value: 0.1, sd: 0.5 } };
    for (const { readingSd } of sdsOf(inventedRig, priors))
      expect(Math.abs(readingSd / 0.3 - 1)).toBeLessThan(1e-4 /* relative */);
  });
});

describe('a mark for another place, of a sight that was zeroed at home', () => {
  const { air } = inventedRig.conditions;
  const surroundings = {
    conditions: { air: { ...air, density: si<'kg/m3'>(0.7 * air.density) }, freeFall: si<'m/s2'>(9.79) },
    faster: { value: si<'m/s'>(-3), sd: si<'m/s'>(0.6) },
    shared: [0.05, 0.001, -1e-5, 1e-5, 1e-3],
  };

  it.each([1, -1] as const)(
    'is as unsure as all eight numbers make it, each moved by itself, numbers growing the way %s',
    (direction) => {
      const rig: Rig = { ...inventedRig, scale: { travelPerUnit: 0.001, direction, atZero: 40 } };
      const home = calibrate({
        ...problem(shotMarks([20, 60], 5e-4)),
        rig,
        measurements: [],
        priors: sureBut({
          launch_speed: 0.5,
          drag_scale: 0.1,
          peep_height: 2e-3,
          scale_ratio: 0.01,
          scale_offset: 0.2,
        }),
      });
      const there = carriedTo(surroundings, asAtHome(home));
      const away = calibrationElsewhere(home, there);
      /** Readings there by the five values there and the three at home, everything flown and zeroed anew. */
      const readings = (list: readonly number[]): readonly number[] => {
        const [v = 0, d = 0, p = 0, ratio = 0, offset = 0, vHome = 0, dHome = 0, pHome = 0] = list;
        const atHome = withParameters(rig, namedValues([vHome, dHome, pHome, ratio, offset]));
        const here = withParameters(there.rig, namedValues([v, d, p, ratio, offset]));
        return marksFor(withSightOf(atHome, here), ranges).marks.map(({ reading }) => Number(reading));
      };
      const centre = [
        ...PARAMETERS.map((name) => there.values[name]),
        home.values.launch_speed,
        home.values.drag_scale,
        home.values.peep_height,
      ];
      const sds = there.covariance.map((row, i) => Math.sqrt(at(row, i)));
      const slopes = centre.map((value, j) => {
        const step = 0.05 * at(sds, j);
        const [more, less] = [readings(centre.with(j, value + step)), readings(centre.with(j, value - step))];
        return more.map((reading, i) => (reading - at(less, i)) / (2 * step));
      });
      const sure = markUncertainty(away, marksFor(away.rig, ranges));
      for (const [i, { readingSd }] of sure.entries()) {
        const gradient = slopes.map((slope) => at(slope, i));
        const variance = times(there.covariance, gradient).reduce(
          (sum, c, j) => sum + c * at(gradient, j),
          0,
        );
        expect(Math.abs(readingSd / Math.sqrt(variance) - 1)).toBeLessThan(
          5e-3 /* relative: one-sided differences */,
        );
      }
    },
  );

  it('counts from the pin that it was zeroed with: by a share of the travel per unit, as many numbers as from there', () => {
    const home = calibrate({ ...problem([]), priors: sureBut({ scale_ratio: 0.05 }) });
    const known = {
      ...surroundings,
      faster: { value: si<'m/s'>(-15), sd: si<'m/s'>(1e-9) },
      shared: [0, 0, 0, 0, 0],
    };
    const away = calibrationElsewhere(home, carriedTo(known, asAtHome(home)));
    const table = marksFor(away.rig, ranges);
    for (const [i, { readingSd }] of markUncertainty(away, table).entries()) {
      const fromZero = Number(at(table.marks, i).reading) - 12.4;
      // A slower bow stands lower even at the zero range, here by nearly half of what 30 yd ask for beyond that.
      expect(Math.abs(readingSd / (0.05 * fromZero) - 1)).toBeLessThan(1e-3 /* relative: the rest is sure */);
    }
  });
});
