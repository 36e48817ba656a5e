import { describe, expect, it } from 'vitest';
import { devianceAt } from '../../../../src/advice/tuning/line-grid.ts';
import { placesOf } from '../../../../src/advice/tuning/line-places.ts';
import { lineSpread } from '../../../../src/advice/tuning/line-spread.ts';
import { at } from '../../../../src/numerics/at.ts';
import { leastSquares } from '../../../../src/numerics/least-squares.ts';
import { type Metres, si } from '../../../../src/quantities/quantity.ts';

const POSITIONS = [-1.6, -0.8, 0, 0.8, 1.6];
const VARIANCES = [3, 1.4, 0.9, 1.6, 2.8];
const MM = 1e-3;
const INCH2 = 0.0254 ** 2;
const places = (arrows: number, variances = VARIANCES) =>
  variances.map((variance, i) => ({
    position: at(POSITIONS, i) * MM,
    variance: variance * INCH2,
    freedom: arrows - 1,
  }));

describe('lines: a worked case by an independent program', () => {
  const six = lineSpread(places(6), 0);
  it('variances 3, 1.4, 0.9, 1.6, 2.8 of six each are not shown', () => {
    expect(six.gain).toBeCloseTo(2.37, 2);
    expect(Math.abs((six.chanceAlone ?? 1) - 0.23)).toBeLessThan(
      0.03 /* two errors of 2000 draws, and the printed digits */,
    );
    expect(six.verdict).toBe('not shown');
    expect(six.tightest).toBe(0);
    expect(six.shootNext.map((place) => place / MM)).toEqual([
      expect.closeTo(-3.2, 9),
      expect.closeTo(3.2, 9),
    ]);
    expect(six.done).toBe(false);
  });
  it('the same of 24 each are', () => {
    const found = lineSpread(places(24), 1.6 * MM);
    expect(Math.abs((found.chanceAlone ?? 1) - 0.004)).toBeLessThan(0.004 /* two errors of 2000 draws */);
    expect(found.verdict).toBe('best');
    expect(Math.abs(found.bestPosition ?? 1)).toBeLessThan(0.1 * MM /* two steps of the grid */);
    expect(found.now?.growth).toBeGreaterThan(0.4);
    expect(found.done).toBe(false);
  });
});

describe('lines', () => {
  it('the scale of the readings changes nothing but the spreads', () => {
    const scaled = lineSpread(
      places(
        6,
        VARIANCES.map((v) => 9 * v),
      ),
      0,
    );
    const plain = lineSpread(places(6), 0);
    expect(scaled.gain).toBeCloseTo(plain.gain ?? Number.NaN, 9);
    expect(scaled.pooledSd / plain.pooledSd).toBeCloseTo(3, 12);
    expect(scaled.chanceAlone).toBe(plain.chanceAlone);
  });
  it('mirrored places have the mirrored answer', () => {
    const skew = [1, 1.2, 2, 3, 6];
    const [one, other] = [lineSpread(places(20, skew), 0), lineSpread(places(20, skew.toReversed()), 0)];
    expect((one.bestPosition ?? 0) / MM).toBeCloseTo(-(other.bestPosition ?? 0) / MM, 9);
    expect(one.verdict).toBe(other.verdict);
    expect(one.openBelow).toBe(other.openAbove);
  });
  it("the grid's best is that of a free minimiser to 0.03 of a place", () => {
    const found = lineSpread(places(24), 0);
    const data = places(24);
    const deviance = ([p0 = 0, logR = 0]: readonly number[]): number => {
      const relative = data.map(({ position }) => 1 + Math.exp(logR) * (position / MM - p0) ** 2);
      const logSum = relative.reduce((sum, h, j) => sum + at(data, j).freedom * Math.log(h), 0);
      return devianceAt(
        { relative, logSum },
        data.map(({ variance }) => variance),
        data.map(({ freedom }) => freedom),
      );
    };
    const floor = deviance([0, 0]) - 100;
    const free = leastSquares((p) => [Math.sqrt(deviance(p) - floor)], [0.1, 0], { gradientTolerance: 1e-6 });
    expect(Math.abs((found.bestPosition ?? 1) / MM - at(free.parameters, 0))).toBeLessThan(
      0.03 * 0.8 /* mm, a place */,
    );
  });
  it('one spread everywhere pools to it', () => {
    const flat = lineSpread(places(6, [2, 2, 2, 2, 2]), 0);
    expect(flat.pooledSd).toBeCloseTo(Math.sqrt(2) * 0.0254, 12);
    expect(flat.gain).toBeCloseTo(0, 12);
    expect(flat.bestPosition).toBeNull();
    expect(flat.verdict).toBe('not shown');
  });
  it('a best place beyond the span, and one open to a side, ask for more there', () => {
    const rising = lineSpread(places(40, [1, 2, 3.5, 6, 9]), 0);
    expect(['beyond the span', 'one-sided']).toContain(rising.verdict);
    expect(rising.openBelow).toBe(true);
    expect(at(rising.shootNext, 0) / MM).toBeCloseTo(-3.2, 9);
  });
  it('two places give the ratio of their spreads and how often chance alone would', () => {
    const two = lineSpread(places(6).slice(0, 2), 0);
    expect(two.verdict).toBe('more positions');
    expect(two.ratio?.value).toBeCloseTo(Math.sqrt(1.4 / 3), 12);
    // F of 5 and 5 degrees exceeds 3/1.4 = 2.14 with chance 0.21 (printed tables put 2.0 to 2.5 between 0.25 and 0.17)
    expect(two.chanceAlone).toBeGreaterThan(0.35);
    expect(two.chanceAlone).toBeLessThan(0.5);
  });
  it('a rest at its best place, surely, is done', () => expect(lineSpread(places(60), 0).done).toBe(true));
});

describe('spread at a place', () => {
  const inches = (values: readonly number[]): readonly Metres[] =>
    values.map((value) => si<'m'>(value * 0.0254));
  const range: Metres = si(50);
  it('is about the mean of its own group, and groups of one place are pooled', () => {
    const [place] = placesOf(
      [
        { position: si(0), range, hits: inches([1, 3]) },
        { position: si(0), range, hits: inches([11, 13]) },
      ],
      range,
    );
    expect(place?.variance).toBeCloseTo(2 * INCH2, 15);
    expect(place?.freedom).toBe(2);
  });
  it('from the outermost two of two arrows is that of the two', () => {
    const [one] = placesOf([{ position: si(0), range, hits: inches([1, 3]) }], range);
    const [other] = placesOf(
      [{ position: si(0), range, hits: { spread: si(2 * 0.0254), arrows: 2 } }],
      range,
    );
    expect((other?.variance ?? 0) / (one?.variance ?? 1)).toBeCloseTo(1, 4);
    expect(other?.freedom).toBeCloseTo(1, 3);
  });
  it('at half the range counts four times', () => {
    const [place] = placesOf([{ position: si(0), range: si(25), hits: inches([1, 3]) }], 50);
    expect(place?.variance).toBeCloseTo(8 * INCH2, 15);
  });
});
