import { describe, expect, it } from 'vitest';
import { clamped, freeParameters, relativeChange } from '../../../src/numerics/parameter-space.ts';

it('clamped: each to its own bounds, and nowhere else without any', () => {
  expect(clamped({ lower: [0, -5], upper: [1, 5] }, [-2, 9])).toEqual([0, 5]);
  expect(clamped({ lower: [0, -5], upper: [1, 5] }, [0.5, -9])).toEqual([0.5, -5]);
  expect(clamped({}, [-1e300, 1e300])).toEqual([-1e300, 1e300]);
});

describe('relativeChange', () => {
  it('is the largest, as a share of the parameter', () =>
    expect(relativeChange({}, [10, -4], [1, -2])).toBe(0.5));
  it('or of its typical change, where that is larger', () =>
    expect(relativeChange({ typical: [20, 8] }, [10, -4], [1, -2])).toBe(0.25));
  it('or of 1, where it is 0 and nothing is said', () => {
    expect(relativeChange({}, [0], [0.25])).toBe(0.25);
    expect(relativeChange({ typical: [0] }, [0], [0.25])).toBe(0.25);
  });
});

describe('freeParameters', () => {
  const space = { lower: [0, 0], upper: [10, 10], typical: [1, 1] };
  it('are all that are away from their bounds', () =>
    expect(freeParameters(space, [5, 5], [1, -1], 0.1)).toEqual([0, 1]));
  it('are not those at a bound that a descent would pass: it goes against the gradient', () => {
    expect(freeParameters(space, [0, 5], [1, 1], 0.1)).toEqual([1]);
    expect(freeParameters(space, [0, 5], [-1, 1], 0.1)).toEqual([0, 1]);
    expect(freeParameters(space, [5, 10], [1, -1], 0.1)).toEqual([0]);
    expect(freeParameters(space, [5, 10], [1, 1], 0.1)).toEqual([0, 1]);
  });
  it('nor those within the margin of it, as a share of their size', () => {
    expect(freeParameters(space, [0.1, 9], [1, -1], 0.1)).toEqual([1]);
    expect(freeParameters(space, [0.11, 9.2], [1, -1], 0.1)).toEqual([0]);
  });
  it('but those on which nothing depends, wherever they are', () =>
    expect(freeParameters(space, [0, 10], [0, 0], 0.1)).toEqual([0, 1]));
  it('and all of a space without bounds', () =>
    expect(freeParameters({}, [0, 0], [1, -1], 0.1)).toEqual([0, 1]));
});
