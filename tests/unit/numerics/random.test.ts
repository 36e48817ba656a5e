import { describe, expect, it } from 'vitest';
import { randomStream, threefry } from '../../../src/numerics/random.ts';

const words = ([a, b]: readonly [number, number]) => [a >>> 0, b >>> 0];

describe('threefry', () => {
  /** The known answers that its authors publish with their code, for 2 words of 32 bits and 20 rounds; from memory. */
  it.each([
    ['zeros', [0, 0], [0, 0], [0x6b200159, 0x99ba4efe]],
    ['ones', [-1, -1], [-1, -1], [0x1cb996fc, 0xbb002be7]],
    ['digits of pi', [0x243f6a88, 0x85a308d3], [0x13198a2e, 0x03707344], [0xc4923a9c, 0x483df7a0]],
  ] as const)('of %s is the published answer', (_, counter, key, answer) =>
    expect(words(threefry(counter, key))).toEqual(answer),
  );
});

const drawn = (seed: number, index: number, count: number) => {
  const { uniform } = randomStream(seed, index);
  return Array.from({ length: count }, uniform);
};
const normals = (seed: number, streams: number, each: number) =>
  Array.from({ length: streams }, (_, index) => {
    const { normal } = randomStream(seed, index);
    return Array.from({ length: each }, normal);
  });
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
/** Four standard deviations: one chance in 16 000, and the seed is fixed. */
const FOUR = 4;

describe('randomStream', () => {
  it('gives the same numbers for the same seed and index, in whichever order streams are drawn', () => {
    const expected = [drawn(7, 3, 5), drawn(7, 4, 5)];
    const [three, four] = [randomStream(7, 3), randomStream(7, 4)];
    const mixed: [number[], number[]] = [[], []];
    for (let i = 0; i < 5; i++) {
      mixed[1].push(four.uniform());
      mixed[0].push(three.uniform());
    }
    expect(mixed).toEqual(expected);
  });
  it('draws the bits of the known answer: the first uniform of seed 0, index 0', () =>
    expect(drawn(0, 0, 1)).toEqual([((0x6b200159 >>> 6) * 2 ** 26 + (0x99ba4efe >>> 6) + 0.5) / 2 ** 52]));
  it('gives others for another seed or index', () => {
    const sets = [drawn(1, 1, 3), drawn(1, 2, 3), drawn(2, 1, 3), drawn(0, 0, 3)].map((list) => list.join());
    expect(new Set(sets).size).toBe(4);
  });
  it('is uniform: mean 1/2, variance 1/12, ten bins equally full', () => {
    const n = 100_000;
    const values = drawn(1, 0, n);
    expect(Math.abs(mean(values) - 0.5)).toBeLessThan(FOUR / Math.sqrt(12 * n));
    expect(Math.abs(mean(values.map((u) => (u - 0.5) ** 2)) - 1 / 12)).toBeLessThan(
      FOUR / Math.sqrt(180 * n),
    );
    const bins = new Array<number>(10).fill(0);
    for (const u of values) bins[Math.floor(10 * u)] = (bins[Math.floor(10 * u)] ?? 0) + 1;
    const chiSquared = bins.reduce((sum, count) => sum + (count - n / 10) ** 2 / (n / 10), 0);
    expect(chiSquared).toBeLessThan(29.7 /* exceeded once in 2000 with 9 degrees of freedom */);
    expect(values.every((u) => u > 0 && u < 1)).toBe(true);
  });
  it('is normal: mean 0, variance 1, no skew, kurtosis 3, over many short streams as over one', () => {
    for (const values of [normals(11, 10_000, 10).flat(), normals(12, 1, 100_000).flat()]) {
      const n = values.length;
      expect(Math.abs(mean(values))).toBeLessThan(FOUR / Math.sqrt(n));
      expect(Math.abs(mean(values.map((z) => z ** 2)) - 1)).toBeLessThan(FOUR * Math.sqrt(2 / n));
      expect(Math.abs(mean(values.map((z) => z ** 3)))).toBeLessThan(FOUR * Math.sqrt(15 / n));
      expect(Math.abs(mean(values.map((z) => z ** 4)) - 3)).toBeLessThan(FOUR * Math.sqrt(96 / n));
    }
  });
  it('has no correlation from draw to draw, from index to index or from seed to seed', () => {
    const n = 50_000;
    const limit = FOUR / Math.sqrt(n);
    const correlation = (a: readonly number[], b: readonly number[]) =>
      mean(a.map((z, i) => z * (b[i] ?? 0)));
    const firsts = normals(3, n, 1).flat();
    expect(Math.abs(correlation(firsts, firsts.slice(1)))).toBeLessThan(limit);
    expect(Math.abs(correlation(firsts, normals(4, n, 1).flat()))).toBeLessThan(limit);
    const row = normals(5, 1, n).flat();
    expect(Math.abs(correlation(row, row.slice(1)))).toBeLessThan(limit);
    expect(Math.abs(correlation(row, row.slice(2)))).toBeLessThan(limit);
  });
  it.each([
    [0.5, 0],
    [0, Number.NaN],
    [Infinity, 0],
  ])('refuses seed %f, index %f', (seed, index) =>
    expect(() => randomStream(seed, index)).toThrow(expect.objectContaining({ code: 'non-finite' })),
  );
});
