import { describe, expect, it } from 'vitest';
import {
  leanMisses,
  secondAxisByPlumb,
  thirdAxisFromSlopes,
  thirdAxisOnBench,
} from '../../../../src/advice/tuning/axis-shots.ts';
import { drawLength } from '../../../../src/advice/tuning/draw-length.ts';
import { nockFit } from '../../../../src/advice/tuning/nock-fit.ts';
import { DEGREE, GRAIN, INCH, POUND_FORCE, YARD } from '../../../../src/quantities/exact.ts';
import { type Metres, si } from '../../../../src/quantities/quantity.ts';

const inches = (value: number): Metres => si(value * INCH);
const FPS = 0.3048;

describe('nock fit: bands of common practice, no source', () => {
  const nock = (...serving: readonly number[]) =>
    nockFit({
      serving: serving.map(inches),
      fitsAt: null,
      arrowMass: si(450 * GRAIN),
      held: null,
      dropped: null,
    });
  it.each([
    [0.103, 'too loose'],
    [0.104, 'loose'],
    [0.1079, 'loose'],
    [0.108, 'good'],
    [0.11, 'good'],
    [0.1105, 'snug'],
    [0.112, 'high'],
    [0.1149, 'high'],
    [0.115, 'too tight'],
  ])('%f in is %s', (diameter, band) => expect(nock(diameter).band).toBe(band));
  it('mean and error of three readings, by hand: 0.0005 in twice over the root of 3', () => {
    const found = nock(0.1095, 0.11, 0.109);
    expect(found.mean / INCH).toBeCloseTo(0.1095, 9);
    expect(found.se / INCH).toBeCloseTo(0.0005 * Math.sqrt(2 / 3), 9);
    expect([found.lowBand, found.highBand, found.unsure, found.done]).toEqual(['good', 'good', false, true]);
  });
  it('near an edge it names both bands', () => {
    const found = nock(0.1102);
    expect([found.lowBand, found.highBand, found.unsure]).toEqual(['good', 'snug', true]);
  });
  it('0.115 in to 0.109 in asks for a thread 0.003 in thinner', () =>
    expect(nock(0.115).threadChange / INCH).toBeCloseTo(-0.003, 9));
  it('another nock shifts all bands by what fits it', () =>
    expect(
      nockFit({
        serving: [inches(0.106)],
        fitsAt: inches(0.106),
        arrowMass: si(0.03),
        held: null,
        dropped: null,
      }).band,
    ).toBe('good'));
  it('weights hung from the arrow give the force between which it lets go: (450 + 250) gr is 0.445 N', () => {
    const found = nockFit({
      serving: [inches(0.109)],
      fitsAt: null,
      arrowMass: si(450 * GRAIN),
      held: si(100 * GRAIN),
      dropped: si(250 * GRAIN),
    });
    expect(found.release?.dropped).toBeCloseTo(0.4448, 4);
    expect(found.release?.held).toBeCloseTo(550 * GRAIN * 9.80665, 12);
  });
});

describe('draw length', () => {
  const speed = si<'m/s'>(280 * FPS);
  const bow = {
    powerStroke: inches(20.75),
    speed,
    energy: si<'J'>(((450 + 85) * GRAIN * speed ** 2) / 2),
    peakDraw: si<'N'>(68 * POUND_FORCE),
    holdingWeight: si<'N'>(14 * POUND_FORCE),
    stopGap: null,
  };
  const longBy = (difference: number) =>
    drawLength({ ...bow, measured: inches(29 + difference), match: inches(29) });
  it('an eighth of an inch is 0.84, at most 1.06, by creeping 0.22 ft/s (an independent program)', () => {
    const { speedChange } = longBy(0.125);
    const half = 0.006; // ft/s: of the printed digit
    expect(Math.abs(speedChange.scaled / FPS + 0.84)).toBeLessThan(half);
    expect(Math.abs((speedChange.peak ?? 0) / FPS + 1.06)).toBeLessThan(half);
    expect(Math.abs((speedChange.creep ?? 0) / FPS + 0.22)).toBeLessThan(half);
  });
  it.each([
    [0.12, 'matched', true],
    [0.125, 'matters', false],
    [-0.25, 'matters', false],
    [0.26, 'wrong', false],
  ])('%f in off is %s', (difference, band, done) => {
    expect(longBy(difference).band).toBe(band);
    expect(longBy(difference).done).toBe(done);
  });
  it('a stop gap leaves it undone', () =>
    expect(drawLength({ ...bow, measured: inches(29), match: inches(29), stopGap: inches(0.06) }).done).toBe(
      false,
    ));
});

describe('axes of the sight', () => {
  const shots = (uphill: readonly number[], downhill: readonly number[], drop = 30) =>
    thirdAxisFromSlopes({
      range: si(40 * YARD),
      slope: si(30 * DEGREE),
      uphill: uphill.map(inches),
      downhill: downhill.map(inches),
      drop: inches(drop),
      arrowSd: (0.03 * INCH) / YARD,
    });
  it('a shift of 2 d tan e tan a is the error e, windage or not', () => {
    const shift = 2 * 30 * Math.tan(2 * DEGREE) * Math.tan(30 * DEGREE);
    for (const windage of [0, 3])
      expect(shots([windage + shift / 2], [windage - shift / 2]).error / DEGREE).toBeCloseTo(2, 9);
  });
  it('six each way at 40 yd on 30 degrees: 1.1 degrees, and 31 each way for half a degree', () => {
    // 0.61 in a degree is a drop of 0.61/(2 tan 1° tan 30°) = 30.26 in
    const six = new Array<number>(6).fill(0);
    const found = shots(six, six, 0.61 / (2 * Math.tan(DEGREE) * Math.tan(30 * DEGREE)));
    expect(Math.abs(found.sd / DEGREE - 1.1)).toBeLessThan(0.05 /* deg, the printed digit */);
    expect(found.arrowsToShow).toBe(31);
    expect(found.done).toBe(false);
  });
  it('on the bench 0.1 degrees of cant at 25 degrees is 0.2 degrees of error', () => {
    expect(thirdAxisOnBench(si(25 * DEGREE), si(0.1 * DEGREE)).error / DEGREE).toBeCloseTo(0.214, 3);
    expect(thirdAxisOnBench(si(25 * DEGREE), si(0.1 * DEGREE)).done).toBe(true);
    expect(thirdAxisOnBench(si(25 * DEGREE), si(0.4 * DEGREE)).done).toBe(false);
  });
  it('0.02 in aside on 2 in is 0.57 degrees', () =>
    expect(secondAxisByPlumb(inches(2), inches(0.02)).error / DEGREE).toBeCloseTo(0.573, 3));
  it('a lean of a degree with 0.74 in of travel at 60 yd, 33 in from the peep, misses 0.85 in to the right', () => {
    // R s tan(lean)/E: 2160 × 0.744 × 0.017455/33
    const [miss] = leanMisses(si(DEGREE), inches(33), [{ range: si(60 * YARD), travel: inches(0.744) }]);
    expect((miss?.lateral ?? 0) / INCH).toBeCloseTo(0.85, 2);
  });
});
