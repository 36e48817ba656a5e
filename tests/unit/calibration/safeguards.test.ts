import { describe, expect, it } from 'vitest';
import { findings } from '../../../src/calibration/diagnose.ts';
import { atBounds, calibrate, estimateOf } from '../../../src/calibration/fit.ts';
import { FIT_NOT_CONVERGED } from '../../../src/calibration/fit-not-converged.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { PARAMETERS, type ParameterName } from '../../../src/calibration/parameters.ts';
import { predictionJacobian } from '../../../src/calibration/prediction-jacobian.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { inventedRig } from '../sight/invented-rig.ts';
import { priors, problem, shotMarks } from './invented-problem.ts';

const speedAtBow = (speed: number, sd: number): Measurement => ({
  kind: 'speed',
  range: si(0.5),
  speed: si(speed),
  sd: si(sd),
  day: null,
});
/** The fit stops where its residuals could shrink by a ten-thousandth: here 1e-3 m/s, of a standard error of 0.2. */
const CLOSE = 1e-3;
const entry = (rows: readonly (readonly number[])[], i: number, j: number): number => at(at(rows, i), j);

describe('a fit of marks that scatter', () => {
  // Two readings at the bow that cannot both be right: 85.344 ± 0.4572 m/s from before, then 84 and 88, each to 0.3.
  const found = calibrate(problem([speedAtBow(84, 0.3), speedAtBow(88, 0.3)]));
  const weights = [1 / 0.4572 ** 2, 1 / 0.3 ** 2, 1 / 0.3 ** 2];
  const seen = [85.344, 84, 88];
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const mean = weights.reduce((sum, weight, i) => sum + weight * at(seen, i), 0) / total;
  const chiSquared = weights.reduce((sum, weight, i) => sum + weight * (at(seen, i) - mean) ** 2, 0);
  // With two measurements the chance of more is exp(-x/2), and exp(-1) at its expectation.
  const widening = Math.sqrt(1 + (chiSquared / 2 - 1) * (1 - Math.exp(1 - chiSquared / 2)) ** 2);

  it('has the weighted mean of all that was measured, and its sum of squares', () => {
    expect(Math.abs(estimateOf(found, 'launch_speed').value - mean)).toBeLessThan(CLOSE);
    expect(found.chiSquared).toBeCloseTo(chiSquared, 4);
    expect(found.widening).toBeCloseTo(widening, 5);
    expect(widening).toBeGreaterThan(6);
  });

  it('widens every error, and the covariance by its square', () => {
    expect(estimateOf(found, 'launch_speed').sd).toBeCloseTo(widening / Math.sqrt(total), 5);
    expect(entry(found.covariance, 0, 0)).toBeCloseTo(widening ** 2 / total, 4);
    // What no measurement touched is as it was, wider.
    expect(entry(found.covariance, 2, 2) / (0.00254 * widening) ** 2).toBeCloseTo(1, 5);
  });

  it('studentises each residual by the others: r / (s sqrt(1 - h)), h its weight over all', () => {
    for (const [i, value] of [84, 88].entries()) {
      const judged = (value - mean) / (0.3 * Math.sqrt(1 - at(weights, 1) / total));
      expect(Math.abs(at(found.residuals, i).residual - (value - mean))).toBeLessThan(CLOSE);
      expect(Math.abs(at(found.residuals, i).studentised - judged)).toBeLessThan(CLOSE / 0.2);
    }
  });
});

describe('correlations', () => {
  it('are none where nothing was measured', () => {
    const { correlations } = calibrate(problem([]));
    for (const [i] of PARAMETERS.entries())
      for (const [j] of PARAMETERS.entries())
        expect(entry(correlations, i, j)).toBeCloseTo(i === j ? 1 : 0, 6);
  });

  it('are covariances over both standard errors: 1 of each with itself, and alike both ways', () => {
    const { correlations, covariance } = calibrate(problem(shotMarks([20, 40, 60], 0.0005)));
    for (const [i] of PARAMETERS.entries()) {
      expect(entry(correlations, i, i)).toBeCloseTo(1, 12);
      for (const [j] of PARAMETERS.entries()) {
        const sds = [entry(covariance, i, i), entry(covariance, j, j)].map(Math.sqrt);
        expect(entry(correlations, i, j) * at(sds, 0) * at(sds, 1)).toBeCloseTo(entry(covariance, i, j), 12);
      }
    }
  });

  it('tie a faster bow to more drag where a speed down range is all that is known well: it holds their difference', () => {
    const far = calibrate(
      problem([{ kind: 'speed', range: si(80), speed: si(75), sd: si(0.01), day: null }]),
    );
    expect(entry(far.correlations, 0, 1)).toBeGreaterThan(0.9);
  });
});

describe('a parameter at the end of what is possible', () => {
  const found = calibrate(problem([]));
  const ends: readonly (readonly [ParameterName, number, number])[] = [
    ['launch_speed', 15, 200],
    ['drag_scale', 0.05, 10],
    ['peep_height', 0.01, 0.4],
    ['scale_ratio', 0.02, 50],
    ['scale_offset', -1e6, 1e6],
  ];

  it.each(ends)('%s is reported at %d and at %d, and not just inside', (name, lowest, highest) => {
    const at = (value: number) => atBounds({ ...found, values: { ...found.values, [name]: value } });
    expect(at(lowest)).toEqual([name]);
    expect(at(highest)).toEqual([name]);
    const inside = (highest - lowest) * 1e-6;
    expect(at(lowest + inside)).toEqual([]);
    expect(at(highest - inside)).toEqual([]);
  });

  it.each([
    ['speed_per_degree', -5, 5],
    ['tape_ratio', 1e-3, 1e3],
  ] as const)('%s is, where it takes part', (name, lowest, highest) => {
    const values = { ...found.values, [name]: 1 };
    const own = { ...found, names: [...found.names, name], values };
    const at = (value: number) => atBounds({ ...own, values: { ...values, [name]: value } });
    expect([at(lowest), at(highest), at(1)]).toEqual([[name], [name], []]);
  });

  it('is reported of a fit that was pushed there: a chronograph that read 400 m/s, to a millimetre a second', () => {
    const pushed = calibrate(problem([speedAtBow(400, 0.001)]));
    expect(pushed.values.launch_speed).toBe(200);
    expect(findings(pushed)).toContainEqual({ kind: 'at bound', parameter: 'launch_speed' });
    expect(calibrate(problem([speedAtBow(1, 0.001)])).values.launch_speed).toBe(15);
  });
});

describe('what a fit keeps of its minimum', () => {
  const names = ['launch_speed', 'drag_scale', 'peep_height', 'scale_ratio', 'scale_offset'] as const;
  it('are the derivatives of the model over the errors, with which it was found, and not differences', () => {
    const marks = shotMarks([20, 40, 60], 0.0005, (i) => i - 1);
    const { linear, values } = calibrate(problem(marks));
    const list = names.map((name) => values[name]);
    const typical = names.map((name) =>
      Math.min(priors[name].sd, Math.abs(priors[name].value) || priors[name].sd),
    );
    const slopes = predictionJacobian(inventedRig, list, names, typical, marks);
    expect(linear.jacobian).toHaveLength(3);
    expect(linear.residuals).toHaveLength(3);
    for (const [i, { sd }] of marks.entries())
      for (const [j] of names.entries()) {
        // Central differences would agree to 1e-6 at best.
        const expected = -entry(slopes, i, j) / sd;
        expect(Math.abs(entry(linear.jacobian, i, j) - expected)).toBeLessThanOrEqual(
          1e-12 * Math.abs(expected),
        );
      }
  });

  it('is no parameter that took no part', () =>
    expect(() => estimateOf(calibrate(problem([])), 'tape_ratio')).toThrow('no parameter tape_ratio'));
});

it('a fit that finds no minimum is an error, not a calibration', () => {
  const unknown = shotMarks([20, 40], 0.0005).map((mark) => ({ ...mark, vertical: Number.NaN }));
  expect(() => calibrate(problem(unknown))).toThrow(
    expect.objectContaining({ code: 'not-converged', reason: FIT_NOT_CONVERGED }),
  );
});
