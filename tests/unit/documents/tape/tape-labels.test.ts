import { describe, expect, it } from 'vitest';
import {
  leastShift,
  numberedRanges,
  placeLabels,
  rankOf,
} from '../../../../src/documents/tape/tape-labels.ts';

const room = (label: number): number => (rankOf(label) === 'ten' ? 2 : 1.5);
const evenly = (from: number, to: number, spacing: number) =>
  Array.from({ length: to - from + 1 }, (_, i) => ({ label: from + i, at: i * spacing }));
const numbered = (...columns: Parameters<typeof numberedRanges>[0]) =>
  [...numberedRanges(columns, room, 'roomy')].toSorted((a, b) => a - b);
const labelled = (from: number, to: number, spacing: number) => numbered(evenly(from, to, spacing));
const placed = (wishes: Parameters<typeof placeLabels>[0]) =>
  placeLabels(wishes, numberedRanges([wishes], room, 'roomy'), room);

describe('rankOf', () => {
  it.each([
    [100, 'ten'],
    [0, 'ten'],
    [45, 'five'],
    [47, 'one'],
    [12.5, 'one'],
  ])('counts %d as a %s', (label, rank) => expect(rankOf(label)).toBe(rank));
});

describe('numberedRanges', () => {
  it('numbers tens alone where only tens have room', () =>
    expect(labelled(20, 60, 0.3)).toEqual([20, 30, 40, 50, 60]));

  it('adds fives where there is room between tens', () =>
    expect(labelled(20, 40, 0.4)).toEqual([20, 25, 30, 35, 40]));

  it('adds every one where all of them find room', () =>
    expect(labelled(20, 30, 2)).toEqual([20, 21, 22, 23, 24, 25, 26, 27, 28, 29, 30]));

  it('numbers no ones where only some of them fit', () => {
    const wishes = [...evenly(20, 25, 2).slice(0, 5), { label: 25, at: 8.5 }];
    expect(numbered(wishes)).toEqual([20, 25]);
  });

  // 25 stands 1 mm from 20 where (2 + 1.5)/2 = 1.75 mm are needed; 35 and 45 have 2 mm.
  it('numbers fives from the one on from which all longer ones fit', () => {
    const at = [
      [20, 0],
      [25, 1],
      [30, 3],
      [35, 5],
      [40, 7],
      [45, 9],
      [50, 11],
    ];
    expect(numbered(at.map(([label = 0, place = 0]) => ({ label, at: place })))).toEqual([
      20, 30, 35, 40, 45, 50,
    ]);
  });

  it('numbers the same ranges on every strip: what one has no room for, none has', () =>
    expect(numbered(evenly(20, 40, 0.4), evenly(20, 40, 0.3))).toEqual([20, 30, 40]));

  it('goes by the strips that have the range at all', () =>
    expect(numbered(evenly(20, 40, 0.4), evenly(20, 23, 0.3))).toEqual([20, 25, 30, 35, 40]));

  it('numbers from the short end within the turning point, where marks spread out towards it', () => {
    const wishes = [3, 4, 5, 6, 7].map((label) => ({ label, at: 12 / label }));
    // By hand: 4, 3, 2.4, 2, 1.714 mm, and every number needs 1.5 mm: 4 is clear of 5 (0.6 mm)? No. So 5 and 3 alone.
    expect([...numberedRanges([wishes], room, 'crowded')].toSorted((a, b) => a - b)).toEqual([3, 5]);
  });
});

describe('placeLabels', () => {
  it('leaves labels at their ticks where there is room', () =>
    expect(placed(evenly(20, 60, 0.4)).every(({ at, middle }) => at === middle)).toBe(true));

  it('moves crowded tens apart evenly and keeps their order', () => {
    const tens = placed([
      { label: 20, at: 5.2 },
      { label: 10, at: 5 },
    ]);
    expect(tens.map(({ label }) => label)).toEqual([10, 20]);
    const [first, second] = tens.map(({ middle }) => middle);
    expect(first).toBeCloseTo(5.1 - 1, 12);
    expect(second).toBeCloseTo(5.1 + 1, 12);
  });

  it('labels nothing for no ticks', () => expect(placed([])).toEqual([]));
});

describe('leastShift', () => {
  it('leaves what is far enough apart', () => expect(leastShift([0, 2, 7], [2, 2])).toEqual([0, 2, 7]));

  // By hand: the three meet as one block about their mean 1; the fourth stays.
  it('spreads a crowd about its mean', () =>
    expect(leastShift([0, 1, 2, 9], [2, 2, 2])).toEqual([-1, 1, 3, 9]));

  // By hand: 0 and 0 spread to -1 and 1; the block then meets 2, so all three centre on 2/3: -4/3, 2/3, 8/3.
  it('lets a crowd push its neighbour and is pushed back', () => {
    const [a = 0, b = 0, c = 0] = leastShift([0, 0, 2], [2, 2]);
    expect(a).toBeCloseTo(-4 / 3, 12);
    expect(b).toBeCloseTo(2 / 3, 12);
    expect(c).toBeCloseTo(8 / 3, 12);
  });

  // By hand: gaps of 1 and 3 about a common place 0: q all pool at (0 + (0-1) + (0-4))/3 = -5/3; p = q, q + 1, q + 4.
  it('keeps a gap of its own between each two', () => {
    const [a = 0, b = 0, c = 0] = leastShift([0, 0, 0], [1, 3]);
    expect(a).toBeCloseTo(-5 / 3, 12);
    expect(b).toBeCloseTo(-2 / 3, 12);
    expect(c).toBeCloseTo(7 / 3, 12);
  });
});
