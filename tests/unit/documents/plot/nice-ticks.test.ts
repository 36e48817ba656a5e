import { describe, expect, it } from 'vitest';
import { niceAxis, niceTicks } from '../../../../src/documents/plot/nice-ticks.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';

describe('niceTicks', () => {
  it.each([
    [0, 100, 6, 20, [0, 20, 40, 60, 80, 100]],
    [0, 100, 11, 10, [0, 10, 20, 30, 40, 50, 60, 70, 80, 90, 100]],
    [0, 0.3, 4, 0.1, [0, 0.1, 0.2, 0.3]],
    [-0.3, 0.3, 4, 0.2, [-0.2, 0, 0.2]],
    [13, 97, 5, 20, [20, 40, 60, 80]],
    [1e-9, 9e-9, 5, 2e-9, [2e-9, 4e-9, 6e-9, 8e-9]],
    [-2e6, 3e6, 6, 1e6, [-2e6, -1e6, 0, 1e6, 2e6, 3e6]],
  ])('divides %d to %d into at most %d ticks by %d', (low, high, atMost, step, values) =>
    expect(niceTicks(low, high, atMost)).toMatchObject({ step, values }),
  );

  it('does not lose its last tick to the rounding of a sum', () =>
    expect(niceTicks(0, 0.1 + 0.2, 4).values).toEqual([0, 0.1, 0.2, 0.3]));

  it('states the decimals its values need', () => {
    expect(niceTicks(0, 100, 6).digits).toBe(0);
    expect(niceTicks(0, 1, 6).digits).toBe(1);
    expect(niceTicks(0, 0.05, 6).digits).toBe(2);
  });

  it('has no negative zero', () => expect(Object.is(niceTicks(-0.3, 10, 4).values[0], 0)).toBe(true));

  it.each([
    [1, 1, 5],
    [2, 1, 5],
    [Number.NaN, 1, 5],
    [0, Number.POSITIVE_INFINITY, 5],
    [1e9, 1e9 + 0.1, 5],
    [0, 1, 1],
  ])('refuses %d to %d in %d', (low, high, atMost) =>
    expect(() => niceTicks(low, high, atMost)).toThrow(DomainError),
  );
});

describe('niceAxis', () => {
  it.each([
    [13, 97, 6, [0, 20, 40, 60, 80, 100]],
    [20, 100, 5, [20, 40, 60, 80, 100]],
    [-0.7, 0.45, 5, [-1, -0.5, 0, 0.5]],
    [-1, 1, 3, [-1, 0, 1]],
    [-1, 999, 3, [-1000, 0, 1000]],
  ])('begins and ends outside %d to %d', (low, high, atMost, values) =>
    expect(niceAxis(low, high, atMost).values).toEqual(values),
  );

  it('refuses fewer than three ticks', () => expect(() => niceAxis(0, 1, 2)).toThrow(DomainError));
});
