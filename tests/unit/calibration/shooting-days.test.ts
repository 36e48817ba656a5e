import { describe, expect, it } from 'vitest';
import { speedAtTemperature, USUAL_SPEED_PER_DEGREE } from '../../../src/bow/temperature.ts';
import { bowChange } from '../../../src/calibration/bow-change.ts';
import { dayEstimates, daysAgree } from '../../../src/calibration/day-estimates.ts';
import { estimateOf } from '../../../src/calibration/fit.ts';
import { markUncertainty } from '../../../src/calibration/mark-uncertainty.ts';
import { predictLateral } from '../../../src/calibration/sideways/lateral-model.ts';
import { at } from '../../../src/numerics/at.ts';
import { FOOT } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';
import { lateralMarks } from '../../../src/setup/assemble/sideways-marks.ts';
import { openSetup } from '../../../src/setup/open.ts';
import { marksFor } from '../../../src/sight/marks.ts';
import { yards } from '../sight/invented-rig.ts';
import { rootMeanSquare } from './invented-archers.ts';
import {
  EXACT,
  fileWith,
  type InventedDay,
  measured,
  readingOn,
  realBow,
  stream,
  writtenDay,
} from './invented-days.ts';

const KELVIN_AT_59F = 288.15;
const PER_FAHRENHEIT = FOOT / (5 / 9);
const open = (days: readonly string[]) => openSetup(fileWith(`days:\n${days.join('')}`), 'days.yaml');
const plain: InventedDay = { date: '2026-06-01', kelvin: KELVIN_AT_59F, pressure: 1013.25 };

describe('the speed of a bow by its temperature', () => {
  it('0.25 fps/degF and 50 degF colder is 12.5 fps slower', () => {
    const perDegree = 0.25 * PER_FAHRENHEIT;
    const cold = speedAtTemperature(si(281 * FOOT), perDegree, (-50 * 5) / 9);
    expect(Math.abs(cold / FOOT - 268.5)).toBeLessThan(1e-9 /* fps, rounding */);
    expect(USUAL_SPEED_PER_DEGREE.sd / PER_FAHRENHEIT).toBeCloseTo(0.15, 12);
  });

  it('is found by two days 50 degF apart within its own error, over 40 seeds', () => {
    const scores = Array.from({ length: 40 }, (_, index) => {
      const random = stream(11, index);
      const { normal } = random;
      const bow = realBow(random);
      const real = 0.1 * normal() * PER_FAHRENHEIT;
      const days = [
        { date: 'warm', kelvin: KELVIN_AT_59F + 25 / 1.8, pressure: 1013.25 },
        { date: 'cold', kelvin: KELVIN_AT_59F - 25 / 1.8, pressure: 1013.25 },
      ].map((day) => {
        const faster = real * (day.kelvin - KELVIN_AT_59F) + FOOT * normal();
        const shown: number = bow.launchSpeed + faster + 1.5 * FOOT * normal();
        return writtenDay(
          bow,
          { ...day, faster },
          [20, 40, 60],
          random,
          `    speed: ${shown.toFixed(4)} m/s\n`,
        );
      });
      const found = estimateOf(open(days).calibration, 'speed_per_degree');
      expect(found.sd).toBeLessThan(0.05 * PER_FAHRENHEIT /* a third of what was known before */);
      return (found.value - real) / found.sd;
    });
    expect(rootMeanSquare(scores)).toBeGreaterThan(0.7);
    expect(rootMeanSquare(scores)).toBeLessThan(1.3 /* 1 ± 0.11 for 40 */);
  });

  it('takes part only where days differ in temperature, or the file gives it', () => {
    const names = (text: string) => openSetup(text, 'a.yaml').calibration.names;
    const day = writtenDay(measured, plain, [20, 60], EXACT);
    expect(names(fileWith(`days:\n${day}`))).not.toContain('speed_per_degree');
    expect(names(fileWith('').replace('281 fps', '281 fps, speed_per_degree: 0.1 fps/degF'))).toContain(
      'speed_per_degree',
    );
    const cold = writtenDay(measured, { ...plain, kelvin: 260 }, [20, 60], EXACT);
    expect(names(fileWith(`days:\n${cold}`))).toContain('speed_per_degree');
  });
});

describe('days in other air', () => {
  const high: InventedDay = { date: '2026-09-01', kelvin: KELVIN_AT_59F, pressure: 700 };
  const bow = { ...measured, launchSpeed: si<'m/s'>(measured.launchSpeed + 0.6) };
  const draggy = {
    ...bow,
    conditions: { ...bow.conditions, arrow: { ...bow.conditions.arrow, dragScale: 1.2 } },
  };

  it('are each predicted in their own: exact marks of a bow with its measured values leave nothing', () => {
    const { calibration } = open([plain, high].map((day) => writtenDay(measured, day, [20, 50, 80], EXACT)));
    // Readings are written to 0.001 mm, 0.09 mm on the target at 80 yd.
    for (const { residual } of calibration.residuals) expect(Math.abs(residual)).toBeLessThan(1e-4 /* m */);
  });

  it('are fitted together: low and high days give the bow back, and the usual air its marks', () => {
    const { calibration } = open(
      [plain, high].map((day) => writtenDay(draggy, day, [20, 40, 60, 80], EXACT)),
    );
    const table = marksFor(calibration.rig, [yards(90)]);
    const [sure] = markUncertainty(calibration, table);
    const off = (at(table.marks, 0).reading ?? Number.NaN) - readingOn(draggy, plain, 90);
    expect(Math.abs(off)).toBeLessThan(
      sure?.readingSd ?? 0 /* one standard error: exact marks, pulled by the priors */,
    );
  });

  it('taken for the usual air would give another bow: 700 hPa has a third less drag', () => {
    const written = writtenDay(measured, high, [20, 40, 60, 80], EXACT);
    const right = open([written]).calibration.values.drag_scale;
    const wrong = open([written.replace('700 hPa', '1013.25 hPa')]).calibration.values.drag_scale;
    expect(Math.abs(right - 1)).toBeLessThan(0.02 /* relative, what the priors pull */);
    expect(wrong).toBeLessThan(right - 0.1);
  });

  it('a mark at the top of the file that names the date is of that day', () => {
    const mark = `{ range: 60 yd, reading: ${readingOn(measured, high, 60).toFixed(3)}, date: ${high.date} }`;
    const day = writtenDay(measured, high, [20], EXACT);
    const { calibration } = openSetup(fileWith(`marks:\n  - ${mark}\ndays:\n${day}`), 'days.yaml');
    for (const { residual } of calibration.residuals) expect(Math.abs(residual)).toBeLessThan(1e-4 /* m */);
  });

  it('another arrow flies as it is: exact marks of a build leave nothing', () => {
    const builds = 'builds:\n  - { name: heavy, arrow: { mass: 520 gr }, launch: { speed: 264 fps } }\n';
    const { arrow } = measured.conditions;
    const heavy = {
      ...measured,
      launchSpeed: si<'m/s'>(264 * FOOT),
      conditions: { ...measured.conditions, arrow: { ...arrow, mass: si<'kg'>((arrow.mass * 520) / 452) } },
    };
    const usual = marksFor(measured, [yards(20)]).zero.down;
    const { zero, marks } = marksFor(heavy, [yards(60)]);
    const reading = 12.4 + (zero.down + at(marks, 0).travel - usual) / 1e-3;
    const day = `days:\n  - { date: a, build: heavy, marks: [{ range: 60 yd, reading: ${reading.toFixed(3)} }] }\n`;
    const { calibration } = openSetup(fileWith(`${builds}${day}`), 'days.yaml');
    const [only] = calibration.residuals;
    expect(Math.abs(only?.residual ?? 1)).toBeLessThan(
      1e-3 /* m: the assumed balance of the two differs a hair */,
    );
    // A speed that follows from another one and a drag of its own make the day less sure.
    const [own = 0] = at(calibration.linear.shifts, 0);
    const base = openSetup(fileWith(day.replace(' build: heavy,', '')), 'days.yaml').calibration;
    expect(Math.abs(own)).toBeGreaterThan(1.5 * Math.abs(at(at(base.linear.shifts, 0), 0)));
  });
});

describe('a bow between its days', () => {
  const dates = ['2026-06-01', '2026-07-01', '2026-08-01', '2026-09-01'];
  const season = (change: (k: number) => Partial<InventedDay>, seed = 3) => {
    const random = stream(seed, 0);
    const bow = realBow(random);
    return open(
      dates.map((date, k) => writtenDay(bow, { ...plain, date, ...change(k) }, [20, 40, 60], random)),
    ).calibration;
  };

  it('that stays as it is has changed in at most one of 20 seasons, and its days agree', () => {
    const seasons = Array.from({ length: 20 }, (_, seed) => {
      const { normal } = stream(29, seed);
      return season(() => ({ faster: FOOT * normal() }), seed);
    });
    expect(seasons.filter((each) => bowChange(each) !== null).length).toBeLessThan(2);
    const chances = seasons.map((each) => daysAgree(each) ?? Number.NaN);
    expect(chances.filter((chance) => chance < 0.05).length).toBeLessThan(4);
  });

  it('whose peep has slipped by 1.5 mm is named with the day, the cause and its size', () => {
    const found = bowChange(season((k) => (k < 2 ? {} : { slipped: 1.5e-3 })));
    expect(found).toMatchObject({ since: '2026-08-01', cause: 'peep_or_sight' });
    expect(Math.abs((found?.size ?? 0) - 1.5e-3)).toBeLessThan(3 * (found?.sd ?? 0));
    expect(found?.chance).toBeGreaterThan(0.9);
  });

  it('that has lost 8 fps is named with the day, the cause and its size', () => {
    const found = bowChange(season((k) => (k < 3 ? {} : { faster: -8 * FOOT })));
    expect(found).toMatchObject({ since: '2026-09-01', cause: 'launch_speed' });
    expect(Math.abs((found?.size ?? 0) + 8 * FOOT)).toBeLessThan(3 * (found?.sd ?? 0));
  });

  it('makes its days disagree when one of them was far off, and that day has the number', () => {
    const found = season((k) => (k === 1 ? { faster: -5 * FOOT } : {}));
    expect(daysAgree(found)).toBeLessThan(0.02);
    const offsets = dayEstimates(found).map(({ speedOffset }): number => speedOffset);
    expect(offsets.indexOf(Math.min(...offsets))).toBe(1);
  });

  it('two days never disagree', () => {
    expect(
      daysAgree(
        open(
          [plain, { ...plain, date: '2026-06-02', faster: 3 }].map((day) =>
            writtenDay(measured, day, [20, 60], EXACT),
          ),
        ).calibration,
      ),
    ).toBeNull();
  });
});

describe('left and right on days', () => {
  const mark = '{ range: 60 yd, lateral: 0 in, arrows: 6, group: 4 in';
  const lateralOf = (text: string) => {
    const { setup, assembly } = openSetup(text, 'days.yaml');
    return predictLateral(assembly.rig, lateralMarks({ setup, days: assembly.days }, false)).map(
      ({ lateral }) => lateral,
    );
  };

  it('each drift in the wind of their own day: as a file with that wind alone says', () => {
    const [calmly, windily] = lateralOf(
      fileWith(
        `marks:\n  - ${mark} }\ndays:\n  - { date: a, wind: { speed: 8 mph, from: 90 deg }, marks: [${mark} }] }\n`,
      ),
    );
    const [alone] = lateralOf(fileWith(`wind: { speed: 8 mph, from: 90 deg }\nmarks:\n  - ${mark} }\n`));
    expect(calmly).toBeCloseTo(lateralOf(fileWith(`marks:\n  - ${mark} }\n`))[0] ?? Number.NaN, 12);
    // The sight of the windy file is zeroed in its wind, a hair off in height at most.
    const still = marksFor(measured, [yards(60)]).marks[0]?.lateral ?? Number.NaN;
    expect((windily ?? 0) - still).toBeLessThan(-0.05 /* m, to the left with a wind from the right */);
    expect(Math.abs((windily ?? 0) - driftAlone(alone ?? Number.NaN))).toBeLessThan(0.02 /* m */);
  });

  /** A file's own wind was there at the zero range too, where the windage takes it: what is left beyond that grows with range. */
  const driftAlone = (lateral: number): number => {
    const windy = openSetup(fileWith('wind: { speed: 8 mph, from: 90 deg }\n'), 'windy.yaml').assembly.rig;
    const { zero } = marksFor(windy, [yards(60)]);
    const { zero: calm } = marksFor(measured, [yards(60)]);
    return lateral - ((zero.windage - calm.windage) * -60 * 0.9144) / windy.geometry.peepToPin;
  };
});
