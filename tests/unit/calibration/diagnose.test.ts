import { describe, expect, it } from 'vitest';
import { type Finding, findings } from '../../../src/calibration/diagnose.ts';
import type { Disagreement, Explained } from '../../../src/calibration/disagreement.ts';
import { type Calibration, calibrate } from '../../../src/calibration/fit.ts';
import type { Measurement } from '../../../src/calibration/measurement.ts';
import { at } from '../../../src/numerics/at.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { problem, shotMarks } from './invented-problem.ts';

const marks = shotMarks([20, 40, 60], 5e-4);
const speed: Measurement = { kind: 'speed', range: si(0.5), speed: si(85.344), sd: si(0.3), day: null };
const fitted = (measurements: readonly Measurement[] = marks): Calibration =>
  calibrate(problem(measurements));
const kinds = (found: readonly Finding[]) => found.map(({ kind }) => kind);

const agreeing = (): Calibration => {
  const found = fitted();
  const parameters = found.parameters.map((parameter) => ({ ...parameter, tiedTo: null }));
  return { ...found, parameters };
};
const explainedBy = (explanation: Explained['explanation'], of: Calibration): Explained => ({
  calibration: of,
  agreement: { chiSquared: 1, freedom: 2, chance: 0.5 },
  explanation,
});
const mark = (index: number, of: Calibration) =>
  explainedBy({ kind: 'mark', index, measurement: at(of.residuals, index).measurement }, of);
const disagreement = (more: Partial<Disagreement>): Disagreement => ({
  isContradiction: false,
  agreement: null,
  explanations: [],
  together: [],
  worst: [],
  order: [],
  rest: null,
  ...more,
});

describe('findings', () => {
  it('of nothing measured say that there are no marks, and of one that there is one', () => {
    expect(at(kinds(findings(fitted([]), null)), 0)).toBe('no marks');
    expect(at(kinds(findings(fitted(marks.slice(0, 1)), null)), 0)).toBe('one mark');
    for (const some of [[speed], marks.slice(0, 2), [...marks.slice(0, 1), speed]]) {
      expect(kinds(findings(fitted(some), null))).not.toContain('no marks');
      expect(kinds(findings(fitted(some), null))).not.toContain('one mark');
    }
  });

  it('of marks that agree and stand alone are none', () => expect(findings(agreeing(), null)).toEqual([]));

  it('name the one that stands out, with by how much', () => {
    const of = agreeing();
    const { studentised } = at(of.residuals, 1);
    expect(findings(of, disagreement({ explanations: [mark(1, of)] }))).toEqual([
      { kind: 'outlier', index: 1, studentised },
    ]);
    // What nothing explains is the worst, and the first of several that are bad.
    const worst = [at(of.residuals, 2).measurement, at(of.residuals, 0).measurement];
    expect(findings(of, disagreement({ worst }))).toEqual([
      { kind: 'outlier', index: 2, studentised: at(of.residuals, 2).studentised },
    ]);
    expect(findings(of, disagreement({}))).toEqual([]);
  });

  it('say of several that any of them may be wrong', () => {
    const of = agreeing();
    expect(findings(of, disagreement({ explanations: [mark(0, of), mark(2, of)] }))).toEqual([
      { kind: 'one of several', indices: [0, 2] },
    ]);
  });

  it('tell the other unit, beside a mark or alone', () => {
    const of = agreeing();
    const unit = explainedBy({ kind: 'other unit', written: 'm', isZeroToo: true }, of);
    expect(findings(of, disagreement({ explanations: [unit], worst: marks }))).toEqual([
      { kind: 'other unit', written: 'm' },
    ]);
    expect(kinds(findings(of, disagreement({ explanations: [mark(0, of), unit] })))).toEqual([
      'outlier',
      'other unit',
    ]);
    const speedOf = explainedBy({ kind: 'launch speed', value: si(80), stated: si(85) }, of);
    expect(findings(of, disagreement({ explanations: [speedOf] }))).toEqual([]);
  });

  it('of a contradiction say so, and which mark it is where that is certain and still in the fit', () => {
    const of = agreeing();
    const sole = disagreement({ isContradiction: true, explanations: [mark(1, of)] });
    expect(kinds(findings(of, sole))).toEqual(['contradiction', 'outlier']);
    const two = disagreement({ isContradiction: true, explanations: [mark(1, of), mark(2, of)] });
    expect(kinds(findings(of, two))).toEqual(['contradiction']);
    const other = explainedBy({ kind: 'strip turned' }, of);
    expect(kinds(findings(of, disagreement({ isContradiction: true, explanations: [other] })))).toEqual([
      'contradiction',
    ]);
    expect(kinds(findings(of, disagreement({ isContradiction: true })))).toEqual(['contradiction']);
    // The mark is not among those of a fit without it.
    const rest = { ...agreeing(), residuals: of.residuals.toSpliced(1, 1) };
    expect(kinds(findings(rest, sole))).toEqual(['contradiction']);
  });

  it('say how far groups scatter, where one of twenty would not, but not beside a contradiction', () => {
    const scattered = (chance: number) => ({ ...agreeing(), chance, widening: 1.7 });
    expect(findings(scattered(0.049), null)).toEqual([{ kind: 'scatter', widening: 1.7, chance: 0.049 }]);
    expect(findings(scattered(0.05), null)).toEqual([]);
    expect(kinds(findings(scattered(0.01), disagreement({ isContradiction: true })))).toEqual([
      'contradiction',
    ]);
    expect(kinds(findings(scattered(0.01), disagreement({})))).toEqual(['scatter']);
  });

  it('tell the place that the drag came to', () => {
    const placed = { ...agreeing(), dragPlace: { isOther: true, chance: 0.8 } };
    expect(findings(placed, null)).toEqual([{ kind: 'layer', isLaminar: true, chance: 0.8 }]);
  });

  it('tell two numbers that cannot be told apart once', () => {
    const tied = (to: Readonly<Record<string, 'launch_speed' | 'drag_scale'>>) => {
      const of = agreeing();
      return {
        ...of,
        parameters: of.parameters.map((one) => ({ ...one, tiedTo: to[one.name] ?? null })),
      };
    };
    expect(findings(tied({ launch_speed: 'drag_scale', drag_scale: 'launch_speed' }), null)).toEqual([
      { kind: 'tied', parameter: 'launch_speed', to: 'drag_scale' },
    ]);
    expect(
      findings(
        tied({ launch_speed: 'drag_scale', drag_scale: 'launch_speed', peep_height: 'launch_speed' }),
        null,
      ),
    ).toHaveLength(1);
    expect(findings(tied({ drag_scale: 'launch_speed', peep_height: 'launch_speed' }), null)).toHaveLength(2);
  });

  it('tell a number more than three of its standard errors from what was measured, with the side', () => {
    const off = (sds: number) => {
      const of = agreeing();
      const [first = expect.fail(), ...others] = of.parameters;
      return {
        ...of,
        parameters: [{ ...first, value: 80 + sds * 0.5, priorValue: 80, priorSd: 0.5 }, ...others],
      };
    };
    expect(findings(off(3), null)).toEqual([]);
    expect(findings(off(-4), null)).toEqual([{ kind: 'far from prior', parameter: 'launch_speed', sds: -4 }]);
    expect(kinds(findings(off(5), null))).toEqual(['far from prior']);
    expect(kinds(findings(off(5), disagreement({ isContradiction: true })))).toEqual(['contradiction']);
  });

  it('tell the gravest first', () => {
    const of = { ...agreeing(), chance: 0.01, dragPlace: { isOther: false, chance: 0.9 } };
    const pushed = { ...of, values: { ...of.values, launch_speed: 200 } };
    expect(kinds(findings(pushed, disagreement({ explanations: [mark(0, of)] })))).toEqual([
      'outlier',
      'at bound',
      'layer',
      'scatter',
    ]);
  });
});
