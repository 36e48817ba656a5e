import { describe, expect, it } from 'vitest';
import { estimateOf } from '../../../../src/calibration/fit.ts';
import { pencilResiduals } from '../../../../src/calibration/mark-residual.ts';
import { markUncertainty } from '../../../../src/calibration/mark-uncertainty.ts';
import { at } from '../../../../src/numerics/at.ts';
import { FOOT } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { type OpenSetup, openSetup } from '../../../../src/setup/open.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { tapePlaces } from '../../../../src/sight/tape.ts';
import { rootMeanSquare } from '../../calibration/invented-archers.ts';
import { measured, realBow, stream } from '../../calibration/invented-days.ts';
import { yards } from '../../sight/invented-rig.ts';

const RANGES = [30, 40, 50, 60, 80];

/** A sight without numbers; its pencil lines to a tenth of a millimetre. */
const fileWith = (marks: readonly string[], sight = ''): string => `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 452 gr, drag_coefficient: 2.4 }
launch: { speed: 281 fps }
air: { temperature: 59 degF, pressure: 1013.25 hPa, humidity: 50 % }
sight: { peep_to_pin: 33 in, zero_range: 20 yd${sight} }
marks:
${marks.map((mark) => `  - { ${mark} }`).join('\n')}
`;

/** Six arrows of 0.02 in/yd each, and how high their middle was, in. */
const groupOf = (range: number, off: number): string =>
  `range_sd: 0.01 yd, vertical: ${off.toFixed(4)} in, arrows: 6, group: ${(0.02 * range * 3.444).toFixed(2)} in`;

const travelsOf = (bow: Rig, ranges: readonly number[]): readonly number[] =>
  marksFor(bow, ranges.map(yards)).marks.map(({ travel }) => travel);

const linesOf = (bow: Rig, gearing: number, ranges = RANGES): readonly string[] =>
  travelsOf(bow, ranges).map(
    (travel, i) => `range: ${at(ranges, i)} yd, on_tape: ${(1000 * gearing * travel).toFixed(1)} mm`,
  );

const ratioOf = ({ calibration }: OpenSetup): number => calibration.values.tape_ratio ?? Number.NaN;

describe.each([0.6, 1, 1.488, 2.5])('a strip that travels %d times as far as the pin', (gearing) => {
  it.each([0, 1, 2, 3, 4, 5])('is drawn with its shot marks on the pencil lines, of bow %d', (seed) => {
    // The first is as it was measured, the others are off by what such measurements are.
    const bow = seed === 0 ? measured : realBow(stream(41, seed));
    const open = openSetup(fileWith(linesOf(bow, gearing)), 'pencil.yaml');
    const { tape_ratio: ratio = Number.NaN, scale_offset: offset } = open.calibration.values;
    const drawn = tapePlaces(open.calibration.rig, RANGES.map(yards), ratio);
    travelsOf(bow, RANGES).forEach((travel, i) => {
      // Laid by the archer's own line of the zero range, which the fit may put a hair off.
      const place = at(drawn, i).along + ratio * offset;
      expect(Math.abs(place - gearing * travel)).toBeLessThan(3e-4 /* m: a pencil line */);
    });
    const { value, sd } = estimateOf(open.calibration, 'tape_ratio');
    expect(Math.abs(value - gearing)).toBeLessThan(3 * sd);
  });
});

describe('pencil lines', () => {
  const bow = realBow(stream(41, 4));

  it('say in millimetres how far each is from the fit', () => {
    const lines = linesOf(bow, 1.5);
    const open = openSetup(fileWith(lines), 'pencil.yaml');
    const drawn = tapePlaces(open.calibration.rig, RANGES.map(yards), ratioOf(open));
    const offset = ratioOf(open) * -open.calibration.values.scale_offset;
    pencilResiduals(open.calibration).forEach(({ predicted }, i) => {
      // Counted from the archer's line of the zero range, which the fit may put a hair off.
      expect(Math.abs(predicted - at(drawn, i).along + offset)).toBeLessThan(
        2e-5 /* m: a difference's curvature */,
      );
    });
  });

  it('may be mixed with readings, and one may lie at the zero range', () => {
    const scale = ', scale: { travel_per_unit: 1 mm, at_zero: 12.4 }';
    const [travel = Number.NaN] = travelsOf(bow, [70]);
    const perUnit = bow.scale?.travelPerUnit ?? Number.NaN;
    const reading = `range: 70 yd, reading: ${(12.4 + travel / perUnit).toFixed(2)}`;
    const lines = ['range: 20 yd, on_tape: 0 mm', ...linesOf(bow, 1.5), reading];
    const open = openSetup(fileWith(lines, scale), 'pencil.yaml');
    expect(Math.abs(ratioOf(open) - 1.5)).toBeLessThan(0.03 /* ratio: pitch and eye are known to 1 % */);
    expect(open.calibration.residuals).toHaveLength(RANGES.length + 2);
  });

  it('keep a ratio that the file gives, to the error of the way to the pin', () => {
    const open = openSetup(fileWith(linesOf(bow, 1.5), ', tape: { travel_ratio: 1.5 }'), 'pencil.yaml');
    const { priorValue, priorSd } = estimateOf(open.calibration, 'tape_ratio');
    // 0.25 of 33 in with half a per cent: 0.9 %.
    expect(priorValue).toBe(1.5);
    expect(Math.abs(priorSd / 1.5 / Math.hypot(0.25 / 33, 0.005) - 1)).toBeLessThan(1e-9 /* rounding */);
    const unknown = openSetup(
      fileWith(linesOf(bow, 1.5), ', tape: { travel_ratio: unknown }'),
      'pencil.yaml',
    );
    expect(unknown.calibration.values).toEqual(
      openSetup(fileWith(linesOf(bow, 1.5)), 'pencil.yaml').calibration.values,
    );
  });

  it('give marks on the target that are right within their errors, over 60 archers', () => {
    const scores = Array.from({ length: 60 }, (_, index) => {
      const random = stream(43, index);
      const real = realBow(random);
      const lines = travelsOf(real, [20, 40, 60]).map((travel, i) => {
        const range = at([20, 40, 60], i);
        // The group's middle and the ruler, each with its error.
        const off = ((0.02 * range) / Math.sqrt(6)) * random.normal();
        const place = 1000 * 1.5 * travel + (i === 0 ? 0 : 0.3 * random.normal());
        return `range: ${range} yd, on_tape: ${place.toFixed(2)} mm, ${groupOf(range, off)}`;
      });
      const open = openSetup(fileWith(lines), 'pencil.yaml');
      const table = marksFor(open.calibration.rig, [yards(80)]);
      const [sure] = markUncertainty(open.calibration, table);
      const [travel = Number.NaN] = travelsOf(real, [80]);
      // On the strip, from the archer's own line of the zero range.
      const { scale_offset: offset } = open.calibration.values;
      const place = ratioOf(open) * (at(table.marks, 0).travel + offset);
      return ((place / 1.5 - travel) * at(table.marks, 0).heightPerTravel) / (sure?.onTargetSd ?? Number.NaN);
    });
    expect(rootMeanSquare(scores)).toBeGreaterThan(0.6);
    expect(rootMeanSquare(scores)).toBeLessThan(1.4);
  });
});

describe('a launch speed that nobody measured', () => {
  const scaled = (speed: string, marks: readonly string[]) =>
    openSetup(
      fileWith(marks, ', scale: { travel_per_unit: 1 mm, at_zero: 12.4 }').replace('281 fps', speed),
      'unknown.yaml',
    );

  it('comes from a prior of 260 ± 50 fps and the marks, within its error, over 30 archers', () => {
    const scores = Array.from({ length: 30 }, (_, index) => {
      const random = stream(47, index);
      const usual = realBow(random);
      const real = { ...usual, launchSpeed: si<'m/s'>((260 + 40 * random.normal()) * FOOT) };
      const perUnit = real.scale?.travelPerUnit ?? Number.NaN;
      const marks = travelsOf(real, [30, 40, 60]).map((travel, i) => {
        const range = at([30, 40, 60], i);
        const off = ((0.02 * range) / Math.sqrt(6)) * random.normal();
        return `range: ${range} yd, reading: ${(12.4 + travel / perUnit).toFixed(2)}, ${groupOf(range, off)}`;
      });
      const found = estimateOf(scaled('unknown', marks).calibration, 'launch_speed');
      expect(found.priorValue / FOOT).toBeCloseTo(260, 9);
      expect(found.priorSd / FOOT).toBeCloseTo(50, 9);
      expect(found.sd / FOOT).toBeLessThan(12 /* fps: a quarter of what was known */);
      return (found.value - real.launchSpeed) / found.sd;
    });
    expect(rootMeanSquare(scores)).toBeGreaterThan(0.6);
    expect(rootMeanSquare(scores)).toBeLessThan(1.4);
  });
});
