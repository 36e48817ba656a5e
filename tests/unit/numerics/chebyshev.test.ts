import { describe, expect, it } from 'vitest';
import { barycentricWeights, chebyshevNodes, interpolateAt } from '../../../src/numerics/chebyshev.ts';

const interpolated = (f: (x: number) => number, n: number, lo: number, hi: number) => {
  const nodes = chebyshevNodes(n, lo, hi);
  const weights = barycentricWeights(n);
  const values = nodes.map(f);
  return { values, at: (x: number) => interpolateAt(nodes, weights, values, x) };
};
const worst = (f: (x: number) => number, at: (x: number) => number, lo: number, hi: number) =>
  Math.max(
    ...Array.from({ length: 401 }, (_, i) => lo + ((hi - lo) * i) / 400).map((x) => Math.abs(f(x) - at(x))),
  );

describe('chebyshevNodes', () => {
  it('five on -1 to 1 are 0 and both signs of 1 and sqrt(1/2)', () => {
    const expected = [-1, -Math.SQRT1_2, 0, Math.SQRT1_2, 1];
    for (const [j, node] of chebyshevNodes(5, -1, 1).entries())
      expect(Math.abs(node - (expected[j] ?? Number.NaN))).toBeLessThan(1e-15 /* rounding */);
  });
  it('have the ends exactly, rise, and mirror each other', () => {
    const nodes = chebyshevNodes(12, 9.1, 91.4);
    expect([nodes[0], nodes.at(-1)]).toEqual([9.1, 91.4]);
    expect(nodes.toSorted((a, b) => a - b)).toEqual(nodes);
    expect(chebyshevNodes(12, -2, 2).map((x) => 0 - x)).toEqual(chebyshevNodes(12, -2, 2).reverse());
  });
  it.each([
    [0.1, 0.7],
    [1e-3, 1 / 3],
    [-0.3, 1e17],
  ])('two are the ends to the last bit: %d and %d', (lo, hi) =>
    expect(chebyshevNodes(2, lo, hi)).toEqual([lo, hi]),
  );
  it.each([1, 0, -3, 2.5, Number.NaN])('refuses %f of them', (n) =>
    expect(() => chebyshevNodes(n, 0, 1)).toThrow(expect.objectContaining({ code: 'singular' })),
  );
});

it('the weights of four nodes are 1/2, -1, 1, -1/2, and of two 1/2, -1/2: signs alternate, ends count half', () => {
  expect(barycentricWeights(4)).toEqual([0.5, -1, 1, -0.5]);
  expect(barycentricWeights(2)).toEqual([0.5, -0.5]);
});

describe('interpolateAt', () => {
  it('is exact for a polynomial of degree n - 1', () => {
    const f = (x: number) => 3 - x + 2 * x ** 4;
    expect(worst(f, interpolated(f, 5, -1, 2).at, -1, 2)).toBeLessThan(
      1e-13 /* rounding of values up to 33 */,
    );
  });
  it('gives the values at the nodes themselves', () => {
    const nodes = chebyshevNodes(6, 0, 1);
    const f = interpolated(Math.exp, 6, 0, 1);
    expect(nodes.map(f.at)).toEqual(nodes.map(Math.exp));
  });
  it('comes within rounding of exp on 0 to 2 with 16 nodes', () =>
    expect(worst(Math.exp, interpolated(Math.exp, 16, 0, 2).at, 0, 2)).toBeLessThan(
      1e-14 /* rounding of values up to e^2 */,
    ));
  it('refuses lists of different lengths', () => {
    for (const [nodes, weights, values] of [
      [[0, 1], [1, 1], [1]],
      [[0, 1], [1], [1, 2]],
      [[0], [1, 1], [1, 2]],
    ] as const)
      expect(() => interpolateAt(nodes, weights, values, 0.5)).toThrow(
        expect.objectContaining({ code: 'singular' }),
      );
  });
});
