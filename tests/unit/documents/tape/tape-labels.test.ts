import { describe, expect, it } from 'vitest';
import { leastShift, placeLabels, rankOf } from '../../../../src/documents/tape/tape-labels.ts';

const room = { ten: 2, five: 1.5, one: 1.5 };
const evenly = (from: number, to: number, spacing: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => ({ label: from + i, at: i * spacing }));
const labelled = (from: number, to: number, spacing: number) =>
  placeLabels(evenly(from, to, spacing), room)
    .map(({ label }) => label)
    .toSorted((a, b) => a - b);

describe('rankOf', () => {
  it.each([
    [100, 'ten'],
    [0, 'ten'],
    [45, 'five'],
    [47, 'one'],
    [12.5, 'one'],
  ])('counts %d as a %s', (label, rank) => expect(rankOf(label)).toBe(rank));
});

describe('placeLabels', () => {
  it('labels tens alone where only tens have room', () =>
    expect(labelled(20, 60, 0.3)).toEqual([20, 30, 40, 50, 60]));

  it('adds fives where there is room between tens', () =>
    expect(labelled(20, 40, 0.4)).toEqual([20, 25, 30, 35, 40]));

  it('adds ones where there is room for all four between two fives', () =>
    expect(labelled(20, 30, 2)).toEqual([20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30]));

  it('labels no ones where only some of the four fit', () => {
    const wishes = [...evenly(20, 25, 2).slice(0, 5), { label: 25, at: 8.5 }];
    expect(placeLabels(wishes, room).map(({ label }) => label)).toEqual([20, 25]);
  });

  it('leaves labels at their ticks where there is room', () =>
    expect(placeLabels(evenly(20, 60, 0.4), room).every(({ at, middle }) => at === middle)).toBe(true));

  it('moves crowded tens apart evenly and keeps their order', () => {
    const placed = placeLabels(
      [
        { label: 20, at: 5.2 },
        { label: 10, at: 5 },
      ],
      room,
    );
    expect(placed.map(({ label }) => label)).toEqual([10, 20]);
    const [first, second] = placed.map(({ middle }) => middle);
    expect(first).toBeCloseTo(5.1 - 1, 12);
    expect(second).toBeCloseTo(5.1 + 1, 12);
  });

  it('labels nothing for no ticks', () => expect(placeLabels([], room)).toEqual([]));
});

describe('leastShift', () => {
  it('leaves what is far enough apart', () => expect(leastShift([0, 2, 7], 2)).toEqual([0, 2, 7]));

  // By hand: the three meet as one block about their mean 1; the fourth stays.
  it('spreads a crowd about its mean', () => expect(leastShift([0, 1, 2, 9], 2)).toEqual([-1, 1, 3, 9]));

  // By hand: 0 and 0 spread to -1 and 1; the block then meets 2, so all three centre on 2/3: -4/3, 2/3, 8/3.
  it('lets a crowd push its neighbour and is pushed back', () => {
    const [a = 0, b = 0, c = 0] = leastShift([0, 0, 2], 2);
    expect(a).toBeCloseTo(-4 / 3, 12);
    expect(b).toBeCloseTo(2 / 3, 12);
    expect(c).toBeCloseTo(8 / 3, 12);
  });
});
