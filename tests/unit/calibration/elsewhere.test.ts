import { describe, expect, it } from 'vitest';
import { asAtHome, calibrationElsewhere, carriedTo, type There } from '../../../src/calibration/elsewhere.ts';
import { type Calibration, calibrate } from '../../../src/calibration/fit.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import { PARAMETERS, withParameters } from '../../../src/calibration/parameters.ts';
import { at } from '../../../src/numerics/at.ts';
import type { Rows } from '../../../src/numerics/linear-algebra.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { priors, problem, shotMarks } from './invented-problem.ts';

const fitted = () => calibrate(problem(shotMarks([20, 40, 60], 0.0005)));
const ranges = [30, 60, 90].map(yards);
const { air } = inventedRig.conditions;
/** A mountain: a fifth less air, and a little less weight. */
const mountain = {
  air: { ...air, density: si<'kg/m3'>(0.8 * air.density) },
  freeFall: si<'m/s2'>(9.79),
};
const surroundings = {
  conditions: mountain,
  faster: { value: si<'m/s'>(-1.5), sd: si<'m/s'>(0.4) },
  shared: [0.02, 0.003, -0.0001, 0.0005, 0.01],
};
const entry = (rows: Rows, i: number, j: number): number => at(at(rows, i), j);

describe('where nothing is different', () => {
  it('marks and their errors are those at home', () => {
    const home = fitted();
    const same = calibrationElsewhere(home, asAtHome(home));
    const [tables, tablesThere] = [home, same].map(({ rig }) => marksFor(rig, ranges));
    if (tables === undefined || tablesThere === undefined) expect.fail();
    const [sure, sureThere] = [markUncertainty(home, tables), markUncertainty(same, tablesThere)];
    for (const [i, mark] of tables.marks.entries()) {
      const there = at(tablesThere.marks, i);
      expect(Math.abs(Number(there.reading) - Number(mark.reading))).toBeLessThan(1e-6 /* numbers */);
      // The errors of home and of here are the same ones: where the zero was off, so are the marks.
      expect(Math.abs(at(sureThere, i).readingSd / at(sure, i).readingSd - 1)).toBeLessThan(
        1e-6 /* relative */,
      );
    }
    expect(same.elsewhere?.home).toBe(home);
    expect(same.names).toEqual(PARAMETERS);
    expect(same.parameters).toEqual(home.parameters);
    expect(same.covariance).toEqual(home.covariance);
    expect(same.problem.rig.scale?.atZero).toBeCloseTo(12.4, 6 /* numbers */);
  });

  it('the values of home stand beside those of here, all of a piece', () => {
    const home = fitted();
    const { covariance } = asAtHome(home);
    expect(covariance).toHaveLength(8);
    for (const i of covariance.keys())
      for (const j of covariance.keys())
        expect(entry(covariance, i, j)).toBe(entry(home.covariance, i < 5 ? i : i - 5, j < 5 ? j : j - 5));
  });
});

describe('carriedTo', () => {
  const here = () => asAtHome(fitted());

  it('puts bow and arrow into the other air, and the launch speed with them', () => {
    const before = here();
    const { rig, calibrated, values } = carriedTo(surroundings, before);
    for (const [is, was] of [
      [rig, before.rig],
      [calibrated, before.calibrated],
    ] as const) {
      expect(is.conditions.air.density).toBe(0.8 * air.density);
      expect(is.conditions.freeFall).toBe(9.79);
      expect(is.conditions.arrow).toBe(was.conditions.arrow);
      expect(is.launchSpeed).toBe(was.launchSpeed - 1.5);
    }
    expect(values).toEqual({ ...before.values, launch_speed: before.values.launch_speed - 1.5 });
  });

  it('has the covariance of a sum: var(v + f) = var v + 2 cov + var f, cov(v + f, x) = cov(v, x) + cov(f, x)', () => {
    const before = here();
    const after = carriedTo(surroundings, before).covariance;
    // cov(f, x) for the five values there, then for speed, drag and peep height at home.
    const along = [0.02, 0.003, -0.0001, 0.0005, 0.01, 0.02, 0.003, -0.0001];
    for (const i of after.keys())
      for (const j of after.keys()) {
        const added =
          i === 0 && j === 0
            ? 2 * 0.02 + 0.4 ** 2
            : (i === 0 ? at(along, j) : 0) + (j === 0 ? at(along, i) : 0);
        expect(entry(after, i, j)).toBeCloseTo(entry(before.covariance, i, j) + added, 12 /* rounding */);
      }
  });
});

describe('calibrationElsewhere', () => {
  const onMountain = (home: Calibration): { there: There; away: Calibration } => {
    const there = carriedTo(surroundings, asAtHome(home));
    return { there, away: calibrationElsewhere(home, there) };
  };

  it('reads every place of the pin as at home: the sight was not touched', () => {
    const home = fitted();
    const { away } = onMountain(home);
    const pinAt = ({ rig }: Calibration, reading: number): number => {
      const { zero } = marksFor(rig, [yards(20)]);
      const { scale } = rig;
      if (scale === null) expect.fail();
      return zero.down + (reading - scale.atZero) * scale.travelPerUnit;
    };
    expect(Math.abs(pinAt(away, 30) - pinAt(home, 30))).toBeLessThan(1e-9 /* m, the pin is solved to that */);
    // Its own fit goes back to the same: the rig of the problem with the fitted place of the scale added.
    const again = withParameters(away.problem.rig, away.values).scale;
    expect(again?.atZero).toBeCloseTo(away.rig.scale?.atZero ?? Number.NaN, 9 /* numbers */);
    expect(away.problem.rig.zeroedWith).toEqual(away.rig.zeroedWith);
    expect(away.rig.zeroedWith?.air).toBe(air);
    expect(away.rig.zeroedWith?.launchSpeed).toBe(home.rig.launchSpeed);
  });

  it('tells each value there with its own error', () => {
    const home = fitted();
    const { there, away } = onMountain(home);
    expect(away.covariance).toHaveLength(5);
    for (const [i, { name, value, sd, priorValue }] of away.parameters.entries()) {
      expect(name).toBe(at(PARAMETERS, i));
      expect(value).toBe(there.values[at(PARAMETERS, i)]);
      expect(sd).toBeCloseTo(Math.sqrt(entry(there.covariance, i, i)), 12);
      expect(priorValue).toBe(at(home.parameters, i).priorValue);
      expect(at(away.covariance, i)).toEqual(at(there.covariance, i).slice(0, 5));
    }
    expect(away.elsewhere?.covariance).toBe(there.covariance);
  });

  it('leaves out of its values what only home has: how the speed goes with the temperature', () => {
    const home = calibrate({
      ...problem(shotMarks([20, 60], 0.0005)),
      priors: { ...priors, speed_per_degree: { value: 0.1, sd: 0.05 } },
    });
    expect(home.parameters).toHaveLength(6);
    const { away } = onMountain(home);
    expect(away.parameters.map(({ name }) => name)).toEqual(PARAMETERS);
  });

  it('of a sight without numbers has none either', () => {
    const bare = calibrate({ ...problem([]), rig: { ...inventedRig, scale: null } });
    const { away } = onMountain(bare);
    expect([away.rig.scale, away.problem.rig.scale]).toEqual([null, null]);
    expect(away.rig.zeroedWith?.air).toBe(air);
  });
});
