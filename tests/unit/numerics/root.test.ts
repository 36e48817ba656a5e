import { describe, expect, it } from 'vitest';
import { bracketedRoot, minimumOf } from '../../../src/numerics/root.ts';
import { recorded } from './recorded.ts';

const within = (tolerance: number) => ({ tolerance });

describe('bracketedRoot', () => {
  it.each([
    ['x^2 - 2', (x: number) => x * x - 2, 0, 2, Math.SQRT2],
    ['-(x^2 - 2), falling', (x: number) => 2 - x * x, 0, 2, Math.SQRT2],
    ['the ends the wrong way round', (x: number) => x * x - 2, 2, 0, Math.SQRT2],
    ['a triple root', (x: number) => (x - 1) ** 3, -4, 3, 1],
    ['a root at 0', (x: number) => Math.sin(x), -1, 2, 0],
    ['a jump', (x: number) => (x < 0.3 ? -1 : 1), 0, 1, 0.3],
    ['a steep exponential', (x: number) => Math.exp(50 * x) - 1e10, -1, 1, Math.log(1e10) / 50],
    ['a root at the lower end', (x: number) => x, 0, 1, 0],
    ['a root at the upper end', (x: number) => x - 1, 0, 1, 1],
  ])('finds the root of %s', (_, f, lo, hi, root) => {
    expect(Math.abs(bracketedRoot(f, lo, hi, within(1e-12)) - root)).toBeLessThanOrEqual(1e-12 + 1e-15);
  });

  it('takes no more than ten calls for a smooth function', () => {
    const { asked, call } = recorded((x: number) => Math.cos(x) - x);
    bracketedRoot(call, 0, 1, within(1e-12));
    expect(asked.length).toBeLessThanOrEqual(10);
  });

  it.each([
    [3, 5],
    [-5, 3],
  ])('is done at an end where f is 0, from %d to %d, without asking again', (lo, hi) => {
    const { asked, call } = recorded((x: number) => x - 3);
    expect(bracketedRoot(call, lo, hi, within(1e-12))).toBe(3);
    expect(asked).toEqual([hi, lo]);
  });

  it('is done where f is 0 inside: the secant of a straight line', () => {
    const { asked, call } = recorded((x: number) => 2 * x - 1);
    expect(bracketedRoot(call, 0, 2, within(1e-12))).toBe(0.5);
    expect(asked).toEqual([2, 0, 0.5]);
  });

  it('asks as often as it may after the ends, and no more', () => {
    const { asked, call } = recorded((x: number) => x ** 9 - 1e-3);
    expect(() => bracketedRoot(call, -1, 2, { tolerance: 1e-14, maxIterations: 3 })).toThrow();
    expect(asked).toHaveLength(5);
  });

  it('never leaves the bracket', () => {
    const { asked, call } = recorded((x: number) => Math.atan(x - 3));
    bracketedRoot(call, -50, 20, within(1e-10));
    expect(Math.min(...asked)).toBeGreaterThanOrEqual(-50);
    expect(Math.max(...asked)).toBeLessThanOrEqual(20);
  });

  it('throws when f has one sign on the bracket', () =>
    expect(() => bracketedRoot((x) => x * x + 1, -1, 1, within(1e-9))).toThrow(
      expect.objectContaining({ code: 'not-bracketed' }),
    ));
  it('throws when f is not a number', () =>
    expect(() => bracketedRoot((x) => Math.sqrt(x - 0.5) - 0.1, -1, 1, within(1e-9))).toThrow(
      expect.objectContaining({ code: 'non-finite', at: -1 }),
    ));
  it('throws when the iterations run out, with the place reached', () =>
    expect(() => bracketedRoot((x) => x ** 9 - 1e-3, -1, 2, { tolerance: 1e-14, maxIterations: 3 })).toThrow(
      expect.objectContaining({ code: 'not-converged', at: expect.any(Number) }),
    ));
});

describe('minimumOf', () => {
  it.each([
    ['a parabola', (x: number) => (x - 1.3) ** 2, -10, 20, 1.3],
    ['a cosine', Math.cos, 0, 6, Math.PI],
    ['a kink', (x: number) => Math.abs(x - 0.7), 0, 1, 0.7],
    ['a flat quartic', (x: number) => (x + 2) ** 4, -5, 1, -2],
    ['x ln x', (x: number) => x * Math.log(x), 0.01, 2, Math.exp(-1)],
  ])('finds the place of the minimum of %s', (_, f, lo, hi, place) => {
    // A quartic is flat to rounding over 1e-4 of x: eps^(1/4).
    const allowed = f(place + 1e-4) - f(place) < 1e-15 ? 2e-4 : 1e-7;
    expect(Math.abs(minimumOf(f, lo, hi, within(1e-9)) - place)).toBeLessThan(allowed);
  });

  it.each([
    ['rises', (x: number) => x, 2],
    ['falls', (x: number) => -x, 3],
  ])('comes to the end when f only %s', (_, f, end) =>
    expect(Math.abs(minimumOf(f, 2, 3, within(1e-6)) - end)).toBeLessThan(
      2e-6 /* twice the tolerance asked for */,
    ),
  );

  it('asks as often as it may after the first place, and no more', () => {
    const { asked, call } = recorded(Math.cos);
    expect(() => minimumOf(call, 0, 6, { tolerance: 1e-9, maxIterations: 2 })).toThrow();
    expect(asked).toHaveLength(3);
  });

  it('throws for an empty interval', () =>
    expect(() => minimumOf(Math.cos, 1, 1, within(1e-6))).toThrow(
      expect.objectContaining({ code: 'not-bracketed' }),
    ));
  it('throws when f is not finite', () =>
    expect(() => minimumOf(() => Number.NaN, 0, 1, within(1e-6))).toThrow(
      expect.objectContaining({ code: 'non-finite' }),
    ));
  it('throws when the iterations run out', () =>
    expect(() => minimumOf(Math.cos, 0, 6, { tolerance: 1e-9, maxIterations: 2 })).toThrow(
      expect.objectContaining({ code: 'not-converged' }),
    ));
});
