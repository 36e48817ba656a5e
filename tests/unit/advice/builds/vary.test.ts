import { describe, expect, it } from 'vitest';
import { gridPoint, gridSize, sweepRange } from '../../../../src/advice/builds/vary.ts';

const axes = [
  { name: 'a', values: ['1', '2', '3'] },
  { name: 'b', values: ['x', 'y'] },
];

describe('a grid', () => {
  it('has as many points as the axes have values, multiplied', () => expect(gridSize(axes)).toBe(6));
  it('runs through the last axis fastest', () => {
    const points = Array.from({ length: 6 }, (_, i) => gridPoint(axes, i).join(''));
    expect(points).toEqual(['1x', '1y', '2x', '2y', '3x', '3y']);
  });
  it('refuses numbers of points it does not have', () => {
    for (const index of [-1, 6, 0.5, Number.NaN]) expect(() => gridPoint(axes, index)).toThrow(/0 to 5/);
  });
  it('of no values has no points', () => expect(gridSize([{ name: 'a', values: [] }])).toBe(0));
});

it('any split of a sweep gives the same answers', () => {
  const evaluate = (point: readonly string[]) => point.join('-');
  const whole = sweepRange(axes, { from: 0, to: 6 }, evaluate);
  const split = [
    sweepRange(axes, { from: 0, to: 2 }, evaluate),
    sweepRange(axes, { from: 2, to: 6 }, evaluate),
  ];
  expect(split.flat()).toEqual(whole);
});
