import { describe, expect, it } from 'vitest';
import type { Attitude, Fins, FlyingArrow } from '../../../../src/arrow/flying-arrow.ts';
import { staticMarginSd } from '../../../../src/arrow/lift/static-margin.ts';
import { staysUpright } from '../../../../src/arrow/lift/stays-upright.ts';
import { unspun } from '../../../../src/arrow/lift/unspun.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { pointArrow, spinningArrow } from '../../flight/point-arrow.ts';

/** Nose 2 at 0.3 m, blades 8 at 0.25 m, vanes 20 at -0.4 m with a wake that takes 5 more of them. */
const fins: Fins = {
  vanes: { slope: 20, place: si(-0.4), count: 3 },
  blades: { slope: 8, place: si(0.25), count: 3 },
  wake: { slope: 5, halfAngle: si(0.016) },
  uncertainty: { vanes: 0.1, blades: 0.2, wake: 0.35 },
};
const attitude = spinningArrow.attitude ?? expect.fail('no attitude');
const arrowWith = (change: Partial<Attitude>): FlyingArrow => ({
  ...spinningArrow,
  attitude: { ...attitude, normalSlope: 30, firstMoment: si(0.6 + 2 - 8), fins, ...change },
});

describe('staticMarginSd', () => {
  it('by hand: each lift C at x moves the margin by C (c - x)/N for the whole of itself', () => {
    // N = 30, centre of pressure c = -5.4/30 = -0.18 m. Vanes, the wake going with them: 20 (-0.18 + 0.4)/30 = 0.146667 m;
    // blades: 8 (-0.18 - 0.25)/30 = -0.114667 m; wake: -5 (-0.18 + 0.4)/30 = -0.036667 m.
    const byHand = Math.hypot(0.1 * 0.146667, 0.2 * 0.114667, 0.35 * 0.036667);
    const sd = staticMarginSd(arrowWith({})) ?? expect.fail('no uncertainty');
    expect(Math.abs(sd / byHand - 1)).toBeLessThan(
      1e-4 /* relative: differences over 1 %, of second order */,
    );
  });

  it('of an arrow without blades is that of its vanes', () => {
    // N = 27 with the vanes' 25, c = (0.6 - 10)/27 = -0.348148: 0.1 x 25 (0.4 - 0.348148)/27 = 4.80110e-3 m.
    const sd = staticMarginSd(
      arrowWith({
        normalSlope: 27,
        firstMoment: si(0.6 - 10),
        fins: { ...fins, vanes: { slope: 25, place: si(-0.4), count: 3 }, blades: null, wake: null },
      }),
    );
    expect(Math.abs((sd ?? Number.NaN) / 4.8011e-3 - 1)).toBeLessThan(1e-4 /* relative, as above */);
  });

  it('is not known where only the sums are, or nothing', () => {
    expect(staticMarginSd(arrowWith({ fins: undefined }))).toBeNull();
    expect(staticMarginSd(pointArrow(0.03, 0.006, 2))).toBeNull();
  });
});

describe('staysUpright', () => {
  const upright = (firstMoment: number, change: Partial<Fins> = {}): boolean =>
    staysUpright(arrowWith({ firstMoment: si(firstMoment), fins: { ...fins, ...change } }));

  it('of an arrow with a wake counts what comes back once the wake has passed: 5 at -0.4 m', () => {
    expect(upright(1.99)).toBe(true);
    expect(upright(2.01)).toBe(false);
    expect(upright(-1)).toBe(true);
  });

  it('of an arrow without a wake is having its centre of pressure behind its balance', () => {
    expect(upright(-0.01, { wake: null })).toBe(true);
    expect(upright(0.01, { wake: null })).toBe(false);
    expect(upright(0, { wake: null })).toBe(false);
    expect(upright(0.01, { vanes: null })).toBe(false);
    expect(upright(-0.01, { vanes: null })).toBe(true);
    expect(staysUpright(arrowWith({ fins: undefined, firstMoment: si(0.01) }))).toBe(false);
    expect(staysUpright(arrowWith({ fins: undefined, firstMoment: si(-0.01) }))).toBe(true);
  });

  it('is not known of a point', () => expect(staysUpright(pointArrow(0.03, 0.006, 2))).toBe(false));
});

describe('unspun', () => {
  it('takes the spin and nothing else', () => {
    expect(unspun(spinningArrow)).toEqual({
      ...spinningArrow,
      attitude: { ...attitude, spinPerMetre: 0 },
    });
  });
  it('leaves a point as it is', () => {
    const point = pointArrow(0.03, 0.006, 2);
    expect(unspun(point)).toBe(point);
  });
});
