import { describe, expect, it } from 'vitest';
import { backwards } from '../../../../src/calibration/mark-order.ts';
import { flyer } from '../../../../src/flight/trajectory.ts';
import { FOOT } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { disagreementWords } from '../../../../src/reports/disagreement-words.ts';
import { inUnits, type Session } from '../../../../src/reports/session.ts';
import { openSetup } from '../../../../src/setup/open.ts';
import type { Rig } from '../../../../src/sight/rig.ts';
import { pinAtZero, pinForHit } from '../../../../src/sight/zero.ts';
import {
  bowOn,
  EXACT,
  fileWith,
  type InventedDay,
  measured,
  readingOn,
  writtenDay,
} from '../../calibration/invented-days.ts';
import { yards } from '../../sight/invented-rig.ts';

const AUGUST: InventedDay = { date: '2026-08-30', kelvin: 300, pressure: 1010 };
const OCTOBER: InventedDay = { date: '2026-10-17', kelvin: 275, pressure: 1000 };

const opened = (days: readonly string[], rest = ''): Session =>
  inUnits(openSetup(fileWith(`${rest}days:\n${days.join('')}`), 'days.yaml'), 'imperial');

/** The two days, with the reading of one mark of October another. */
function slippedIn(ranges: readonly number[], range: number, reading: string): Session {
  const right = `reading: ${readingOn(measured, OCTOBER, range).toFixed(3)},`;
  const october = writtenDay(measured, OCTOBER, ranges, EXACT);
  expect(october).toContain(right);
  return opened([
    writtenDay(measured, AUGUST, [20, 40, 60], EXACT),
    october.replace(right, `reading: ${reading},`),
  ]);
}

describe('marks of several days', () => {
  it('that agree contradict nothing', () =>
    expect(
      opened([
        writtenDay(measured, AUGUST, [20, 40, 60], EXACT),
        writtenDay(measured, OCTOBER, [30, 60, 80], EXACT),
      ]).disagreement,
    ).toBeNull());

  it('are named by range and day where a range was shot on both', () => {
    const words = disagreementWords(slippedIn([20, 40, 60, 80], 60, '25'));
    expect(words).toContain('The 60 yd mark of 2026-10-17 does not belong with the rest');
    expect(words).toContain('The 60 yd mark of 2026-10-17 is left out of the fit');
    // 0.1 of a number is a tenth of a millimetre of pin, the last digit that is printed.
    expect(words).toContain(`it would read ${readingOn(measured, OCTOBER, 60).toFixed(1)}; 25 was written`);
  });

  it('are named by range alone where it was shot on one day only', () =>
    expect(disagreementWords(slippedIn([20, 40, 80], 80, '38'))).toContain('The 80 yd mark is left out'));

  it('run back against marks of another day on the same scale', () => {
    const session = slippedIn([30, 50], 50, '18');
    const pairs = backwards(session.assembly.problem);
    expect(pairs.map(({ near, far }) => [near.day, far.day])).toEqual([['2026-08-30', '2026-10-17']]);
    expect(disagreementWords(session)).toMatch(/Reading 18 at 50 yd lies above [0-9.]+ at 40 yd/);
  });

  it('shot with a leaning bow, or with another arrow, contradict nothing for that', () => {
    const cant = si<'rad'>(0.2);
    const leant = october({ ...measured, cant }, [30, 50, 70], `    cant: ${cant} rad\n`);
    expect(opened([writtenDay(measured, AUGUST, [20, 40, 60], EXACT), leant]).disagreement).toBeNull();
    // 40 ft/s slower its 55 yd mark lies beyond the 60 yd mark of the other arrow.
    const slow: Rig = { ...measured, launchSpeed: si(241 * FOOT) };
    const heavy = 'builds:\n  - { name: heavy, launch: { speed: 241 fps } }\n';
    const build = october(slow, [30, 55], '    build: heavy\n');
    const session = opened([writtenDay(measured, AUGUST, [20, 40, 60], EXACT), build], heavy);
    expect(leftFor(slow, 55)).toBeGreaterThan(readingOn(measured, AUGUST, 60));
    expect(session.disagreement).toBeNull();
    expect(backwards(session.assembly.problem)).toEqual([]);
  });
});

/** What the sight, left as it was zeroed on the file's own bow, reads for a hit at the range (yd) with another on that day. */
function leftFor(bow: Rig, range: number): number {
  const day = bowOn(bow, OCTOBER);
  const pin = pinForHit(day, yards(range), 0, flyer(day.conditions));
  return 12.4 + (pin.down - pinAtZero(measured, 0).down) / 0.001;
}

const october = (bow: Rig, ranges: readonly number[], extra: string): string => `  - date: ${OCTOBER.date}
    air: { temperature: ${OCTOBER.kelvin} K, pressure: ${OCTOBER.pressure} hPa, humidity: 50 % }
${extra}    marks:
${ranges.map((range) => `      - { range: ${range} yd, reading: ${leftFor(bow, range).toFixed(2)}, arrows: 6 }\n`).join('')}`;
