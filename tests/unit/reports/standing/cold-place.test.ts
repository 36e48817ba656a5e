import { expect, it } from 'vitest';
import { markUncertainty } from '../../../../src/calibration/mark-uncertainty.ts';
import { at } from '../../../../src/numerics/at.ts';
import { FOOT } from '../../../../src/quantities/exact.ts';
import { inUnits } from '../../../../src/reports/session.ts';
import { placeAsked } from '../../../../src/reports/standing/place-asked.ts';
import { standingAt } from '../../../../src/reports/standing/standing-at.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import { marksFor } from '../../../../src/sight/marks.ts';
import { rootMeanSquare } from '../../calibration/invented-archers.ts';
import { fileWith, readingOn, realBow, stream, writtenDay } from '../../calibration/invented-days.ts';
import { yards } from '../../sight/invented-rig.ts';

const KELVIN_AT_59F = 288.15;
const PER_FAHRENHEIT = FOOT / (5 / 9);
/** -10 degC at 700 hPa: some 3000 m up. */
const COLD = { date: 'cold', kelvin: 263.15, pressure: 700 };
const NOWHERE = { place: null, altitude: null, seaLevelPressure: null, humidity: null };

const answer = (text: string) => {
  const session = inUnits(openSetup(text, 'days.yaml'), 'imperial');
  const place = placeAsked(session, { ...NOWHERE, temperature: '263.15 K', pressure: '700 hPa' });
  const { calibration } = standingAt(session, { place, build: null });
  const table = marksFor(calibration.rig, [yards(70)]);
  const [sure] = markUncertainty(calibration, table);
  return { reading: at(table.marks, 0).reading ?? Number.NaN, sd: sure?.readingSd ?? Number.NaN, place };
};

it('what two days say of the warmth holds at a cold place within the error told, over 40 archers', () => {
  const scores = Array.from({ length: 40 }, (_, index) => {
    const random = stream(53, index);
    const { normal } = random;
    const bow = realBow(random);
    const real = 0.15 * normal() * PER_FAHRENHEIT;
    const fasterAt = (kelvin: number) => real * (kelvin - KELVIN_AT_59F);
    const days = [KELVIN_AT_59F + 14, KELVIN_AT_59F - 14].map((kelvin, k) =>
      writtenDay(
        bow,
        { date: `day ${k}`, kelvin, pressure: 1013.25, faster: fasterAt(kelvin) + FOOT * normal() },
        [20, 40, 60],
        random,
      ),
    );
    const { reading, sd } = answer(fileWith(`days:\n${days.join('')}`));
    return (reading - readingOn(bow, { ...COLD, faster: fasterAt(COLD.kelvin) }, 70)) / sd;
  });
  expect(rootMeanSquare(scores)).toBeGreaterThan(0.6);
  expect(rootMeanSquare(scores)).toBeLessThan(1.5 /* as the printed errors are held to */);
});

it('is less sure where nobody measured the warmth: 45 degF at 0.15 fps/degF are 6.75 fps more', () => {
  const marks = 'marks:\n  - { range: 60 yd, reading: 31, arrows: 6 }\n';
  const { place } = answer(fileWith(marks));
  expect(Math.abs((place?.warmth.faster.sd ?? 0) / FOOT - 0.15 * 45)).toBeLessThan(1e-9 /* fps, rounding */);
  expect(place?.warmth.isMeasured).toBe(false);
  const stated = fileWith(marks).replace(
    '281 fps }',
    '281 fps, speed_per_degree: 0.2 fps/degF, speed_per_degree_sd: 0.02 fps/degF }',
  );
  const { faster, isMeasured } = answer(stated).place?.warmth ?? expect.fail();
  // One mark hardly touches it: there is no day at another temperature.
  expect(Math.abs(faster.value / FOOT + 0.2 * 45)).toBeLessThan(1e-6 /* fps, of the fit */);
  expect(Math.abs(faster.sd / FOOT / (0.02 * 45) - 1)).toBeLessThan(0.01 /* relative */);
  expect(isMeasured).toBe(true);
});
