import { describe, expect, it } from 'vitest';
import { NumericalError } from '../../../src/numerics/numerical-error.ts';
import {
  add,
  cross,
  dot,
  length,
  rotate,
  scale,
  subtract,
  unit,
  type Vector3,
} from '../../../src/numerics/vector.ts';

const x: Vector3 = [1, 0, 0];
const y: Vector3 = [0, 1, 0];
const z: Vector3 = [0, 0, 1];

describe('vector arithmetic', () => {
  it('adds, subtracts and scales component by component', () => {
    expect(add([1, 2, 3], [10, 20, 30])).toEqual([11, 22, 33]);
    expect(subtract([1, 2, 3], [10, 20, 30])).toEqual([-9, -18, -27]);
    expect(scale([1, -2, 3], 2)).toEqual([2, -4, 6]);
  });
  it('dot of (1,2,3) and (4,-5,6) is 12; length of (2,3,6) is 7', () => {
    expect(dot([1, 2, 3], [4, -5, 6])).toBe(12);
    expect(length([2, 3, 6])).toBe(7);
  });
  it.each([
    ['x cross y', x, y, z],
    ['y cross z', y, z, x],
    ['z cross x', z, x, y],
    ['y cross x', y, x, [0, 0, -1]],
  ] as const)('%s is right-handed', (_, a, b, expected) => expect(cross(a, b)).toEqual(expected));
});

describe('unit', () => {
  it('keeps the direction and makes the length 1', () =>
    expect(unit([0, -3, 4])).toEqual([0, -0.6000000000000001, 0.8]));
  it.each([
    ['zero', [0, 0, 0]],
    ['infinite', [Infinity, 0, 0]],
    ['not a number', [0, Number.NaN, 0]],
  ] as const)('refuses a vector that is %s', (_, v) => expect(() => unit(v)).toThrow(NumericalError));
});

describe('rotate', () => {
  const close = (a: Vector3, b: Vector3) =>
    expect(length(subtract(a, b))).toBeLessThan(1e-15 /* rounding of a unit vector */);
  it('a quarter turn about z takes x to y, not to -y', () => close(rotate(x, z, Math.PI / 2), y));
  it('a quarter turn about x takes y to z', () => close(rotate(y, x, Math.PI / 2), z));
  it('a third of a turn about the diagonal takes x to y', () =>
    close(rotate(x, unit([1, 1, 1]), (2 * Math.PI) / 3), y));
  it('leaves the axis where it is', () =>
    close(rotate(unit([1, 2, 3]), unit([1, 2, 3]), 1.1), unit([1, 2, 3])));
});
