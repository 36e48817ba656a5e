import { describe, expect, it } from 'vitest';
import { bowChange } from '../../../src/calibration/bow-change.ts';
import { dayEstimates, daysAgree } from '../../../src/calibration/day-estimates.ts';
import { USUAL_DAY } from '../../../src/calibration/days.ts';
import { type Calibration, calibrate } from '../../../src/calibration/fit.ts';
import type { Day } from '../../../src/calibration/measurement.ts';
import { besideOf, priorOf, withParameters } from '../../../src/calibration/parameters.ts';
import { changeShifts, dayShifts } from '../../../src/calibration/prediction.ts';
import { at } from '../../../src/numerics/at.ts';
import { choleskyFactor } from '../../../src/numerics/cholesky.ts';
import { chiSquaredSurvival } from '../../../src/numerics/distributions.ts';
import { inverseSymmetric, type Rows, times } from '../../../src/numerics/linear-algebra.ts';
import { inventedRig } from '../sight/invented-rig.ts';
import { NO_DAYS, priors, problem, shotMarks } from './invented-problem.ts';

/** What was shot on one day: its name, the ranges in yd, and by how much the bow was faster, m/s. */
interface Evening {
  readonly day: Day;
  readonly ranges: readonly number[];
  readonly faster: number;
}

const SD_PER_RANGE = 3e-4;
/** The place of the scale is known to half a number, so that no prior is so wide that digits are lost. */
const known = { ...priors, scale_offset: { value: 0, sd: 0.5 } };

/** Marks of those evenings in one fit, each off by up to twice `off` of its standard uncertainties. */
function fitted(evenings: readonly Evening[], off = 0.25): Calibration {
  const measurements = evenings.flatMap(({ day, ranges, faster }, k) => {
    const marks = shotMarks(ranges, SD_PER_RANGE, (i) => off * (((i * 3 + k * 2) % 5) - 2));
    const shifts = dayShifts(inventedRig, marks, { ...NO_DAYS, speed: faster });
    return marks.map((mark, i) =>
      mark.kind === 'mark' ? { ...mark, day, vertical: mark.vertical + at(at(shifts, i), 0) } : mark,
    );
  });
  return calibrate({ ...problem(measurements), days: USUAL_DAY, priors: known });
}

const dot = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, value, i) => sum + value * at(b, i), 0);
const column = (rows: Rows, j: number): readonly number[] => rows.map((row) => at(row, j));
/** The derivatives of the predictions and the residuals, m, as they were before errors were made independent. */
function unwhitened({ linear: { factor, jacobian }, residuals }: Calibration) {
  const slopes = factor.map((row) =>
    at(jacobian, 0).map((_, j) => -row.reduce((sum, value, k) => sum + value * at(at(jacobian, k), j), 0)),
  );
  return { slopes, left: residuals.map(({ residual }) => residual) };
}

const three: readonly Evening[] = [
  { day: 'a', ranges: [20, 40, 60, 80], faster: 0.3 },
  { day: 'b', ranges: [30, 50, 70], faster: -0.5 },
  { day: 'c', ranges: [20, 55, 75], faster: 0.4 },
];

/**
 * The effects of every day as unknowns beside the parameters, of variance 1 before, with errors of the marks that have nothing in
 * common (Henderson's mixed-model equations): at the fit's minimum the parameters' own share of the right side is 0.
 */
function dayUnknowns(fit: Calibration) {
  const { measurements } = fit.problem;
  const { slopes, left } = unwhitened(fit);
  const { shifts } = fit.linear;
  const days = [...new Set(measurements.map(({ day }) => day))];
  const effects = days.flatMap((day) =>
    [0, 1, 2].map((e) => measurements.map((shot, i) => (shot.day === day ? at(at(shifts, i), e) : 0))),
  );
  const columns = [...fit.names.map((_, j) => column(slopes, j)), ...effects];
  const before = [...fit.names.map((name) => 1 / priorOf(fit.priors, name).sd ** 2), ...effects.map(() => 1)];
  const weighted = (a: readonly number[], b: readonly number[]): number =>
    a.reduce((sum, value, i) => sum + (value * at(b, i)) / at(measurements, i).sd ** 2, 0);
  const normal = columns.map((a, i) => columns.map((b, j) => weighted(a, b) + (i === j ? at(before, i) : 0)));
  const n = fit.names.length;
  const own = normal.slice(n).map((row) => row.slice(n));
  const values = times(
    inverseSymmetric(own),
    effects.map((effect) => weighted(effect, left)),
  );
  const covariance = inverseSymmetric(normal)
    .slice(n)
    .map((row) => row.slice(n));
  // As a speed: each effect counts as much of it as moves the day's marks alike.
  const likeness = days.flatMap((_, d) =>
    [0, 1, 2].map((e) => {
      const speed = at(effects, 3 * d);
      return dot(at(effects, 3 * d + e), speed) / dot(speed, speed);
    }),
  );
  const combined = days.map((_, d) => likeness.map((value, k) => (Math.floor(k / 3) === d ? value : 0)));
  return { days, values, covariance, combined };
}

describe('how days differed', () => {
  it.each([
    ['that agree', 0.25, 1],
    ['that scatter, their errors wider', 1.5, 1.2],
  ] as const)(
    'is what the effects of each day come to as unknowns of their own, as a speed, of marks %s',
    (_, off, least) => {
      const fit = fitted(three, off);
      expect(fit.widening).toBeGreaterThanOrEqual(least);
      const { days, values, covariance, combined } = dayUnknowns(fit);
      const found = dayEstimates(fit);
      expect(found.map(({ day, measurements }) => [day, measurements])).toEqual([
        ['a', 4],
        ['b', 3],
        ['c', 3],
      ]);
      for (const [d] of days.entries()) {
        const c = at(combined, d);
        const { speedOffset, sd } = at(found, d);
        expect(Math.abs(speedOffset - USUAL_DAY.speed * dot(c, values))).toBeLessThan(
          1e-4 /* m/s: the minimum is found to that */,
        );
        const expected = USUAL_DAY.speed * fit.widening * Math.sqrt(dot(c, times(covariance, c)));
        expect(Math.abs(sd / expected - 1)).toBeLessThan(1e-6 /* relative: two ways to one number */);
      }
    },
  );

  it('agrees by chi-squared of as many days, of what they were told to differ by', () => {
    const fit = fitted(three);
    const { days, values, covariance, combined } = dayUnknowns(fit);
    const offsets = combined.map((c) => dot(c, values));
    // What is told of a difference: its variance before less that after.
    const told = combined.map((c, k) =>
      combined.map((d, l) => (k === l ? dot(c, c) : 0) - dot(c, times(covariance, d))),
    );
    const chiSquared = dot(offsets, times(inverseSymmetric(told), offsets));
    const expected = chiSquaredSurvival(chiSquared, days.length);
    expect(expected).toBeGreaterThan(0.05);
    expect(expected).toBeLessThan(0.95);
    expect(Math.abs((daysAgree(fit) ?? Number.NaN) - expected)).toBeLessThan(1e-4 /* chance */);
  });

  it('cannot be told of a day on which only the zero range was shot with an arrow that shows nothing', () => {
    const blind = fitted(three);
    const shifts = blind.linear.shifts.map((row, i) =>
      blind.problem.measurements[i]?.day === 'c' ? row.map(() => 0) : row,
    );
    const fit = { ...blind, linear: { ...blind.linear, shifts } };
    expect(daysAgree(fit)).toBeNull();
    const [, , last] = dayEstimates(fit);
    expect([last?.speedOffset, last?.sd]).toEqual([0, 0]);
  });

  it('is told of named days alone', () => {
    const undated = fitted([{ day: null, ranges: [20, 40], faster: 0 }, ...three.slice(1)]);
    expect(dayEstimates(undated).map(({ day }) => day)).toEqual(['b', 'c']);
    expect(daysAgree(undated)).toBeNull();
  });
});

/** ln of the normal density of y with covariance M, but for a constant. */
function logDensity(M: Rows, y: readonly number[]): number {
  const L = choleskyFactor(M);
  const logRoot = L.reduce((sum, row, i) => sum + Math.log(at(row, i)), 0);
  return -logRoot - dot(y, times(inverseSymmetric(M), y)) / 2;
}

/** What the comment of bowChange says, from densities of all that was measured instead of sums over the fit. */
function changesOf(fit: Calibration, order: readonly Day[]) {
  const { rig, measurements } = fit.problem;
  const usual = { speed: 5 * 0.3048, sight: 1.5e-3, drag: 0.1 };
  const shifts = changeShifts(withParameters(rig, fit.values), measurements, usual, besideOf(fit.values));
  const { slopes, left } = unwhitened(fit);
  const off = fit.names
    .map((name) => fit.values[name] ?? Number.NaN)
    .map((value, j) => {
      const [name] = fit.names.slice(j, j + 1);
      return value - priorOf(fit.priors, name ?? expect.fail()).value;
    });
  const seen = left.map((value, i) => value + dot(at(slopes, i), off));
  const { factor } = fit.linear;
  const variances = fit.names.map((name) => priorOf(fit.priors, name).sd ** 2);
  const M = measurements.map((_, i) =>
    measurements.map(
      (__, j) =>
        dot(at(factor, Math.min(i, j)), at(factor, Math.max(i, j))) +
        variances.reduce((sum, v, k) => sum + v * at(at(slopes, i), k) * at(at(slopes, j), k), 0),
    ),
  );
  return order.slice(1).flatMap((since, k) =>
    [usual.speed, usual.sight, usual.drag].map((size, c) => {
      const after = order.slice(k + 1);
      const x = measurements.map(({ day }, i) => (after.includes(day) ? at(at(shifts, i), c) : 0));
      const changed = M.map((row, i) => row.map((value, j) => value + at(x, i) * at(x, j)));
      const inverse = inverseSymmetric(changed);
      return {
        since,
        cause: at(['launch_speed', 'peep_or_sight', 'drag'], c),
        size: size * dot(x, times(inverse, seen)),
        sd: size * Math.sqrt(1 - dot(x, times(inverse, x))),
        factor: Math.exp(logDensity(changed, seen) - logDensity(M, seen)),
      };
    }),
  );
}

describe('bowChange', () => {
  const season = (changed: number): readonly Evening[] => [
    { day: '2026-05-01', ranges: [20, 40, 60, 80], faster: 0 },
    { day: '2026-06-01', ranges: [30, 50, 70], faster: 0.1 },
    { day: '2026-07-01', ranges: [20, 55, 75], faster: changed },
    { day: '2026-08-01', ranges: [25, 45, 65], faster: changed },
  ];

  it('weighs every day and cause by the densities of all that was measured, with the change and without', () => {
    const fit = fitted(season(-1.7));
    const found = bowChange(fit) ?? expect.fail();
    const changes = changesOf(fit, ['2026-05-01', '2026-06-01', '2026-07-01', '2026-08-01']);
    // A tenth of all bows have changed, at any of nine alike.
    const odds = changes.map(({ factor }) => (0.1 / 9) * factor);
    const all = odds.reduce((sum, value) => sum + value, 0);
    const place = odds.indexOf(Math.max(...odds));
    const { since, cause, size, sd } = at(changes, place);
    expect(found).toMatchObject({ since, cause });
    expect([since, cause]).toEqual(['2026-07-01', 'launch_speed']);
    const close = (is: number, expected: number) =>
      expect(Math.abs(is / expected - 1)).toBeLessThan(1e-3 /* relative: the minimum is found to that */);
    close(found.size, size);
    close(found.sd, sd);
    close(found.chanceOfAny, all / (all + 0.9));
    close(found.chance, at(odds, place) / (all + 0.9));
    expect(found.chance).toBeLessThan(0.999);
  });

  it('names none where the chance of any is below nine in ten, and one where it is above', () => {
    const chanceAt = (changed: number): number => {
      const changes = changesOf(fitted(season(changed)), [
        '2026-05-01',
        '2026-06-01',
        '2026-07-01',
        '2026-08-01',
      ]);
      const all = changes.reduce((sum, { factor }) => sum + (0.1 / 9) * factor, 0);
      return all / (all + 0.9);
    };
    let [lo, hi] = [-3, 0];
    for (let i = 0; i < 12; i++) {
      const middle = (lo + hi) / 2;
      if (chanceAt(middle) > 0.9) lo = middle;
      else hi = middle;
    }
    expect(bowChange(fitted(season(lo - 0.01)))).not.toBeNull();
    expect(bowChange(fitted(season(hi + 0.01)))).toBeNull();
  });

  it('stays finite where the change is beyond all doubt', () => {
    const found = bowChange(fitted(season(-25))) ?? expect.fail();
    expect(found.chanceOfAny).toBe(1);
    expect(found.chance).toBeGreaterThan(0);
    expect(found.chance).toBeLessThanOrEqual(1);
  });

  describe('takes the days in the order', () => {
    const slower = (days: readonly [Day, Day]): string | undefined =>
      bowChange(
        fitted([
          { day: days[0], ranges: [20, 40, 60, 80], faster: 0 },
          { day: days[1], ranges: [20, 40, 60, 80], faster: -4 },
        ]),
      )?.since;
    it('of their dates, however they stand in the file', () => {
      expect(slower(['2026-05-01', '2026-06-01'])).toBe('2026-06-01');
      expect(slower(['2026-06-01', '2026-05-01'])).toBe('2026-06-01');
    });
    it('of the file where any has no date', () => {
      expect(slower(['warm', 'cold'])).toBe('cold');
      expect(slower(['2026-06-01', 'a 2025-01-01'])).toBe('a 2025-01-01');
      expect(slower(['evening of 2026-06-01', '2026-05-01'])).toBe('2026-05-01');
    });
    it('with what names no day before all others', () => {
      expect(slower([null, '2026-05-01'])).toBe('2026-05-01');
      expect(slower(['2026-05-01', null])).toBe('2026-05-01');
    });
  });

  it('of one day is none', () =>
    expect(bowChange(fitted([{ day: 'a', ranges: [20, 40, 60, 80], faster: -4 }]))).toBeNull());
});
