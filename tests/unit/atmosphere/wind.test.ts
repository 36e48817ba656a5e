import { expect, it } from 'vitest';
import { calm, windFrom } from '../../../src/atmosphere/wind.ts';
import { DomainError } from '../../../src/quantities/domain-error.ts';
import { type Radians, si } from '../../../src/quantities/quantity.ts';

const degrees = (value: number): Radians => si((value * Math.PI) / 180);

it.each([
  ['ahead', 0, -3, 0],
  ['the right', 90, 0, -3],
  ['behind', 180, 3, 0],
  ['the left', 270, 0, 3],
  ['the left, counted the short way', -90, 0, 3],
  ['ahead on the right', 45, -3 * Math.SQRT1_2, -3 * Math.SQRT1_2],
])('a wind from %s (%d deg) blows %d m/s along and %d m/s to the right', (_, from, tail, across) => {
  const wind = windFrom(si(3), degrees(from));
  expect(wind.tail).toBeCloseTo(tail, 12);
  expect(wind.across).toBeCloseTo(across, 12);
});

it('is uniform unless a shear is given', () => {
  expect(windFrom(si(3), degrees(0)).shear).toBe(0);
  expect(windFrom(si(3), degrees(0), 0.14, si(10))).toMatchObject({ shear: 0.14, referenceHeight: 10 });
});

it('calm is no wind', () => expect([calm.tail, calm.across]).toEqual([0, 0]));

it.each([
  ['a negative speed', () => windFrom(si(-1), degrees(0))],
  ['no speed', () => windFrom(si(Number.NaN), degrees(0))],
  ['no bearing', () => windFrom(si(1), si(Number.POSITIVE_INFINITY))],
  ['a negative shear', () => windFrom(si(1), degrees(0), -0.1)],
  ['a height of 0', () => windFrom(si(1), degrees(0), 0.1, si(0))],
])('windFrom %s throws', (_, run) => expect(run).toThrow(DomainError));
