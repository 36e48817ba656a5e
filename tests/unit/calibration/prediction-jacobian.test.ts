import { describe, expect, it } from 'vitest';
import { calm } from '../../../src/atmosphere/wind.ts';
import { calibrate } from '../../../src/calibration/fit.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import {
  besideOf,
  namedValues,
  PARAMETERS,
  type ParameterName,
  withParameters,
} from '../../../src/calibration/parameters.ts';
import { observed, predict } from '../../../src/calibration/prediction.ts';
import { predictionJacobian } from '../../../src/calibration/prediction-jacobian.ts';
import { differenceJacobian } from '../../../src/numerics/difference-jacobian.ts';
import { type LeastSquaresOptions, leastSquares } from '../../../src/numerics/least-squares.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { huntingArrow } from '../flight/hunting-arrow.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';
import { priors, problem, shotMarks } from './invented-problem.ts';

const names: readonly ParameterName[] = [...PARAMETERS, 'speed_per_degree', 'tape_ratio'];
const values = [85, 0.95, 0.117, 1.01, 0.2, 0.1, 1.1];
const typical = [0.4572, 0.15, 0.00254, 0.009, 1, 0.1, 0.1];

const metres = (range: number) => si<'m'>(yards(range));

/** One of each kind, on the usual day and on a cold one with wind. */
const measurements: readonly Measurement[] = (() => {
  const { conditions } = inventedRig;
  const cold = {
    air: { ...conditions.air, density: si<'kg/m3'>(1.3) },
    wind: { ...calm, tail: si<'m/s'>(-3), across: si<'m/s'>(2) },
    freeFall: conditions.freeFall,
    cant: si<'rad'>(0.02),
    warmer: -20,
    arrow: null,
  };
  const mark = { kind: 'mark', vertical: 0.01, sd: si<'m'>(0.02), cant: si<'rad'>(0), day: null } as const;
  return [
    ...shotMarks([20, 40, 80], 0.0005),
    { ...mark, range: metres(50), reading: 3, setting: cold },
    { ...mark, kind: 'pencil', range: metres(60), onTape: 0.02, lineAt: null },
    { ...mark, kind: 'pencil', range: metres(30), onTape: 0.01, lineAt: 1, setting: cold },
    { kind: 'speed', range: metres(30), speed: si(80), sd: si(0.5), day: null },
    { kind: 'speed', range: si(0), speed: si(85), sd: si(0.5), day: null, setting: cold },
    { kind: 'drop', aimedWith: metres(20), range: metres(50), drop: si(0.9), sd: si(0.02), day: null },
    {
      kind: 'drop',
      aimedWith: metres(30),
      range: metres(40),
      drop: si(0.4),
      sd: si(0.02),
      day: null,
      setting: cold,
    },
  ];
})();

describe('predictionJacobian', () => {
  const spinning = {
    ...inventedRig,
    conditions: { ...inventedRig.conditions, arrow: huntingArrow().flying },
  };
  it.each([
    ['an arrow that flies as a point', inventedRig],
    ['a spinning arrow', spinning],
    ['a sight zeroed on another slope', { ...inventedRig, zeroSlope: si<'rad'>(0.3) }],
  ])('for %s is what differences of the predictions are, for every kind of measurement', (_, rig) => {
    const all = (list: readonly number[]): readonly number[] => {
      const named = namedValues(list, names);
      return predict(withParameters(rig, named), measurements, besideOf(named));
    };
    // Central differences over a hundredth of what changes each noticeably.
    const differences = differenceJacobian(all, values, all(values), { typical, precision: 1e-6 });
    const found = predictionJacobian(rig, values, names, typical, measurements);
    expect(found).toHaveLength(measurements.length);
    for (const [j, name] of names.entries()) {
      const column = differences.map((row) => row[j] ?? Number.NaN);
      const size = Math.max(...column.map(Math.abs));
      for (const [i, slope] of column.entries())
        expect(
          Math.abs((found[i]?.[j] ?? Number.NaN) - slope) / size,
          `${name}, measurement ${i}`,
        ).toBeLessThan(2e-4 /* of the largest: curvature over a hundredth, and hits to 1e-7 m over it */);
    }
  });
});

describe('the fit', () => {
  it.each([
    ['six marks', problem(shotMarks([20, 30, 40, 50, 60, 80], 0.0005, (i) => Math.sin(5 * i)))],
    [
      'measurements of every kind',
      {
        ...problem(measurements),
        priors: { ...priors, speed_per_degree: { value: 0, sd: 0.1 }, tape_ratio: { value: 1, sd: 0.1 } },
      },
    ],
  ])(
    'of %s is that by differences of the predictions to a millionth of a standard error, and at the minimum',
    (_, posed) => {
      const found = calibrate(posed);
      const { rig, priors: known } = posed;
      const prior = found.names.map((name) => known[name] ?? expect.fail());
      // Days are alike, so the errors are independent.
      const residuals = (list: readonly number[]): readonly number[] => {
        const named = namedValues(list, found.names);
        const predicted = predict(withParameters(rig, named), posed.measurements, besideOf(named));
        return [
          ...posed.measurements.map((one, i) => (observed(one) - (predicted[i] ?? Number.NaN)) / one.sd),
          ...prior.map(({ value, sd }, j) => (value - (list[j] ?? Number.NaN)) / sd),
        ];
      };
      const start = prior.map(({ value }) => value);
      const typical = prior.map(({ value, sd }) => Math.min(sd, Math.abs(value) || sd));
      const apart = (options: LeastSquaresOptions): number => {
        const other = leastSquares(residuals, start, { typical, precision: 1e-8, ...options });
        if (other.outcome !== 'converged') expect.fail(other.reason);
        return Math.max(
          ...found.parameters.map(({ value, sd }, j) =>
            Math.abs((value - (other.parameters[j] ?? Number.NaN)) / sd),
          ),
        );
      };
      const stopping = { gradientTolerance: 1e-4, stepTolerance: 1e-4 };
      expect(apart(stopping)).toBeLessThan(1e-6 /* standard errors, with the fit's own stopping tests */);
      expect(apart({ gradientTolerance: 1e-7 })).toBeLessThan(
        2e-4 /* standard errors: the stopping test leaves 1e-4 of the residuals' length, here 1 to 2 */,
      );
    },
  );
});
