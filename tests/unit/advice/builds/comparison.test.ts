import { describe, expect, it } from 'vitest';
import { compare, REAL } from '../../../../src/advice/builds/comparison.ts';
import { covariance, standardError } from '../../../../src/advice/builds/error-form.ts';
import { withParameters } from '../../../../src/calibration/parameters.ts';
import { flyer } from '../../../../src/flight/trajectory.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { impact } from '../../../../src/sight/zero.ts';
import { shotMarks } from '../../calibration/invented-problem.ts';
import { yards } from '../../sight/invented-rig.ts';
import { bowWith, candidate, grains, tallVanes, withPoint } from '../invented-candidates.ts';

const questions = { ranges: [20, 60, 100].map(yards), crosswind: -4.4704, ring: 0.2032 };
const heavy = candidate('heavy', withPoint(225));
const twin = candidate('twin', withPoint(125));
const crooked = candidate('tall vanes', tallVanes);
const { base, others } = compare([bowWith([heavy, twin, crooked])], questions);
const [versusHeavy, versusTwin, versusTall] = others;
const [h, t, v] = [versusHeavy ?? expect.fail(), versusTwin ?? expect.fail(), versusTall ?? expect.fail()];

describe('compare', () => {
  it('mass and balance of the heavier point by hand: 100 gr at 0.25 + 28.5 + 1.3/4 in', () => {
    const [m0, x0] = [base.facts.mass?.value ?? 0, base.facts.balance?.value ?? 0];
    expect(Math.abs((h.facts.mass?.value ?? 0) - grains(100))).toBeLessThan(1e-12 /* kg */);
    const x = (m0 * x0 + grains(100) * 29.075 * 0.0254) / (m0 + grains(100));
    expect(Math.abs((h.readings.facts.balance?.value ?? 0) - x)).toBeLessThan(1e-12 /* m */);
    expect(h.facts.mass?.real).toBe(true);
  });

  it('a twin differs in nothing, surely', () => {
    expect(t.facts.launchSpeed?.value).toBe(0);
    expect(t.facts.launchSpeed?.sd).toBeLessThan(1e-9);
    expect(t.facts.launchSpeed?.real).toBe(false);
    for (const row of t.rows) {
      expect(Math.abs(row.drop?.value ?? 1)).toBeLessThan(1e-9 /* m */);
      expect(Math.abs(row.withBaseMark.value)).toBeLessThan(
        1e-6 /* m: pins are solved to 1e-10 m from two starts */,
      );
      expect(row.withBaseMark.sd).toBeLessThan(1e-6 /* m */);
    }
  });

  it('a heavier arrow of the same bow is slower, with more momentum and more energy, and surely so', () => {
    for (const key of ['launchSpeed', 'launchMomentum', 'launchEnergy', 'efficiency'] as const)
      expect(h.facts[key]?.real).toBe(true);
    expect(h.facts.launchSpeed?.value).toBeLessThan(0);
    expect(h.facts.launchMomentum?.value).toBeGreaterThan(0);
    expect(h.facts.launchEnergy?.value).toBeGreaterThan(0);
  });

  it('what both builds share cancels: the drop is far less sure than its difference', () => {
    const row = h.rows[2]?.drop ?? expect.fail();
    const own = standardError(h.readings.rows[2]?.drop?.error ?? expect.fail());
    expect(row.sd).toBeLessThan(own);
    const [a, b] = [h.readings.rows[2]?.drop?.error ?? new Map(), base.rows[2]?.drop?.error ?? new Map()];
    const joint = Math.sqrt(covariance(a, a) + covariance(b, b) - 2 * covariance(a, b));
    expect(Math.abs(row.sd / joint - 1)).toBeLessThan(1e-9 /* relative */);
    expect(row.sd / Math.sqrt(covariance(a, a) + covariance(b, b))).toBeLessThan(0.6);
  });

  it('a shape that differs only in vanes and weighs the same leaves the bow at the speed of the base, and drags more', () => {
    expect(v.facts.launchSpeed?.value).toBe(0);
    expect(v.facts.dragCoefficient?.value).toBeGreaterThan(0);
    expect(v.facts.dragCoefficient?.real).toBe(true);
    expect(v.facts.dragCoefficient?.mostly).toBe('drag law');
  });

  it('the hit with the base mark is that of a flight with the base pin, to 1 %', () => {
    const rig = h.readings.build.rig;
    const flight = flyer(rig.conditions);
    for (const [i, range] of questions.ranges.entries()) {
      const down = base.rows[i]?.pin?.value ?? expect.fail();
      const hit = impact(flight, rig, { down, windage: 0 }, range).height;
      expect(Math.abs((h.rows[i]?.withBaseMark.value ?? 0) / hit - 1)).toBeLessThan(
        0.01 /* relative: the hit is nearly straight in the pin */,
      );
    }
    expect(h.rows[2]?.withBaseMark.value).toBeLessThan(0);
  });

  it('travel, reading and the top of the path are those of the marks', () => {
    const { marks } = marksFor(base.build.rig, questions.ranges);
    for (const [i, mark] of marks.entries()) {
      expect(Math.abs((base.rows[i]?.travel?.value ?? 1) - mark.travel)).toBeLessThan(1e-7 /* m */);
      expect(Math.abs((base.rows[i]?.reading?.value ?? 0) - (mark.reading ?? 1))).toBeLessThan(
        1e-4 /* scale units */,
      );
      expect(Math.abs((base.rows[i]?.highest?.value ?? 0) - Math.max(0, mark.highest.height))).toBeLessThan(
        1e-5 /* m */,
      );
    }
  });

  it('a slower arrow leaves less room for a guess of the range', () => {
    for (const [i, guess] of h.readings.guesses.entries()) {
      expect(guess?.range).toBe(questions.ranges[i]);
      if (i > 0) expect(guess?.short).toBeLessThan(base.guesses[i]?.short ?? 0);
    }
  });

  it('a wind from the right blows the arrow left, the lighter and draggier one more', () => {
    for (const row of base.rows) expect(row.windDrift?.value).toBeLessThan(0);
    expect(h.rows[2]?.windDrift?.value).toBeGreaterThan(0);
  });

  it('a difference is real beyond 1.96 standard errors, and says so', () => {
    for (const contrast of others)
      for (const row of contrast.rows)
        for (const found of [row.drop, row.energy, row.windDrift, row.travel])
          expect(found?.real).toBe(Math.abs(found?.value ?? 0) > REAL * (found?.sd ?? 0));
  });

  it('first order is enough: a bow moved by one standard error in all three moves the drop by its form, to 3 %', () => {
    const bow = bowWith([]);
    const { launch_speed, drag_scale, peep_height } = bow.calibration.values;
    const moved = withParameters(bow.calibration.problem.rig, {
      ...bow.calibration.values,
      launch_speed: launch_speed + 0.4572,
      drag_scale: drag_scale + 0.15,
      peep_height: peep_height + 0.00254,
    });
    const rig = { ...moved, launchSpeed: si<'m/s'>(moved.launchSpeed) };
    const at = (r: typeof rig) => marksFor(r, [yards(100)]).marks[0]?.travel ?? Number.NaN;
    const straight = compare([bow], questions).base.rows[2]?.travel;
    const sum = [...(straight?.error ?? new Map())];
    // Each cause by one standard deviation, signs as they are: chronograph, drag as a whole, peep.
    const drag = Math.hypot(...sum.filter(([name]) => name.startsWith('drag law')).map(([, size]) => size));
    const rest = sum
      .filter(([name]) => !name.startsWith('drag law'))
      .reduce((total, [, size]) => total + size, 0);
    const shift = at(rig) - at(bow.calibration.rig);
    expect(Math.abs((rest + drag) / shift - 1)).toBeLessThan(0.03 /* relative */);
  });
});

describe('with marks', () => {
  it('the base is no surer or less sure than its calibration says', () => {
    const bow = bowWith([heavy], shotMarks([20, 40, 60, 80], 4e-4));
    const compared = compare([bow], questions);
    const speed = standardError(compared.base.facts.launchSpeed?.error ?? new Map());
    expect(Math.abs(speed / Math.sqrt(bow.calibration.covariance[0]?.[0] ?? 0) - 1)).toBeLessThan(
      1e-6 /* relative */,
    );
  });
});

describe('two files', () => {
  it('of one bow share its peep height, of two bows do not', () => {
    const marks = (identity: string) =>
      compare([bowWith([]), bowWith([], [], { name: 'other', identity })], questions).others[0]?.rows[2]
        ?.travel;
    expect(marks('bow')?.sd).toBeLessThan(marks('another bow')?.sd ?? 0);
  });
});
