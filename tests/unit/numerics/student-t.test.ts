import { describe, expect, it } from 'vitest';
import {
  chiSquaredSurvival,
  normalCumulative,
  normalQuantile,
  studentTCumulative,
  studentTQuantile,
} from '../../../src/numerics/student-t.ts';

const relative = (found: number, expected: number) => Math.abs(found / expected - 1);
const nonFinite = expect.objectContaining({ code: 'non-finite' });

describe('studentTCumulative', () => {
  it.each([-50, -1, -0.01, 0, 0.3, 2, 1e6])('of one degree of freedom is 1/2 + atan(t)/pi, at %f', (t) =>
    expect(Math.abs(studentTCumulative(t, 1) - (0.5 + Math.atan(t) / Math.PI))).toBeLessThan(1e-15),
  );
  it.each([-50, -1, 0, 0.3, 2])('of two is 1/2 + t/(2 sqrt(2 + t^2)), at %f', (t) =>
    expect(Math.abs(studentTCumulative(t, 2) - (0.5 + t / 2 / Math.sqrt(2 + t * t)))).toBeLessThan(2e-15),
  );
  it('keeps its digits in the far tail: 1/(pi t) at -1e100', () =>
    expect(relative(studentTCumulative(-1e100, 1), 1e-100 / Math.PI)).toBeLessThan(1e-12));
  it('becomes the normal distribution with many degrees, as 1/(4 degrees)', () => {
    const gap = (degrees: number) => normalCumulative(1.5) - studentTCumulative(1.5, degrees);
    // Leading term of the expansion in 1/degrees: density (z^3 + z)/4; handbook 26.7.5 from memory.
    const density = Math.exp(-1.125) / Math.sqrt(2 * Math.PI);
    expect(relative(gap(1e4) * 1e4, (density * (1.5 ** 3 + 1.5)) / 4)).toBeLessThan(1e-3);
    expect(studentTCumulative(1.5, Infinity)).toBe(normalCumulative(1.5));
  });
  it.each([
    [1, 0],
    [1, -3],
    [1, Number.NaN],
    [Number.NaN, 4],
  ])('refuses t = %f with %f degrees', (t, degrees) =>
    expect(() => studentTCumulative(t, degrees)).toThrow(nonFinite),
  );
  it('is all or nothing at infinity', () => {
    expect(studentTCumulative(Infinity, 3)).toBe(1);
    expect(studentTCumulative(-Infinity, 3)).toBe(0);
  });
});

describe('studentTQuantile', () => {
  it.each([1e-12, 0.1, 0.3, 0.6, 0.975, 0.9995])(
    'of one degree of freedom is tan(pi (p - 1/2)), at %f',
    (p) => {
      const expected = p < 0.25 ? -1 / Math.tan(Math.PI * p) : Math.tan(Math.PI * (p - 0.5));
      expect(relative(studentTQuantile(p, 1), expected)).toBeLessThan(1e-12);
    },
  );
  it('is 0 in the middle and mirrors around it', () => {
    expect(studentTQuantile(0.5, 3)).toBe(0);
    expect(studentTQuantile(0.25, 3)).toBe(-studentTQuantile(0.75, 3));
  });
  it.each([0, 1, -0.1, Number.NaN])('refuses a probability of %f', (p) =>
    expect(() => studentTQuantile(p, 4)).toThrow(nonFinite),
  );
});

describe('normal distribution', () => {
  it('has 0.6826894921370859 within one deviation (published to 16 digits, from memory)', () =>
    expect(Math.abs(normalCumulative(1) - normalCumulative(-1) - 0.6826894921370859)).toBeLessThan(2e-15));
  it('leaves 0.05 outside 1.959963984540054 (published to 16 digits, from memory)', () =>
    expect(Math.abs(normalQuantile(0.975) - 1.959963984540054)).toBeLessThan(1e-13));
  it('keeps its digits far out: density/z (1 - 1/z^2 + 3/z^4 - 15/z^6) at -30', () => {
    const z = 30;
    const tail =
      (Math.exp((-z * z) / 2) / Math.sqrt(2 * Math.PI) / z) * (1 - z ** -2 + 3 * z ** -4 - 15 * z ** -6);
    expect(relative(normalCumulative(-z), tail)).toBeLessThan(105 * z ** -8 + 1e-12 /* the next term */);
    expect(relative(normalQuantile(tail), -z)).toBeLessThan(1e-12);
  });
});

describe('chiSquaredSurvival', () => {
  it('with two degrees is exp(-x/2)', () =>
    expect(relative(chiSquaredSurvival(7, 2), Math.exp(-3.5))).toBeLessThan(1e-14));
  it('with one is the normal distribution beyond both signs of the root', () =>
    expect(relative(chiSquaredSurvival(2.25, 1), 2 * normalCumulative(-1.5))).toBeLessThan(1e-14));
  it('of nothing is 1', () => expect(chiSquaredSurvival(0, 5)).toBe(1));
  it.each([
    [-1, 3],
    [1, 0],
    [Number.NaN, 3],
  ])('refuses %f with %f degrees', (sum, degrees) =>
    expect(() => chiSquaredSurvival(sum, degrees)).toThrow(nonFinite),
  );
});
