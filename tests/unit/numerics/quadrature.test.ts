import { describe, expect, it } from 'vitest';
import { gaussLegendre, integrate } from '../../../src/numerics/quadrature.ts';

const singular = expect.objectContaining({ code: 'singular' });

describe('gaussLegendre', () => {
  /** Abramowitz and Stegun, 1964, table 25.4, from memory: the positive nodes and their weights, 15 decimals. */
  it.each([
    [2, [[0.577350269189626, 1]]],
    [
      3,
      [
        [0, 0.888888888888889],
        [0.774596669241483, 0.555555555555556],
      ],
    ],
    [
      4,
      [
        [0.339981043584856, 0.652145154862546],
        [0.861136311594053, 0.347854845137454],
      ],
    ],
    [
      5,
      [
        [0, 0.568888888888889],
        [0.538469310105683, 0.478628670499366],
        [0.906179845938664, 0.236926885056189],
      ],
    ],
  ])("of %i nodes is the table's", (n, table) => {
    const { nodes, weights } = gaussLegendre(n);
    const upper = nodes.map((x, k) => [x, weights[k] ?? Number.NaN] as const).filter(([x]) => x >= 0);
    for (const [k, [node = 0, weight = 0]] of table.entries()) {
      expect(Math.abs((upper[k]?.[0] ?? Number.NaN) - node)).toBeLessThan(
        0.6e-15 * 2 /* half a digit of print, rounding */,
      );
      expect(Math.abs((upper[k]?.[1] ?? Number.NaN) - weight)).toBeLessThan(0.6e-15 * 2);
    }
    expect(upper.length).toBe(table.length);
  });
  it.each(Array.from({ length: 64 }, (_, i) => i + 1))(
    'of %i nodes is exact to degree 2n - 1, rising, mirrored, positive',
    (n) => {
      const { nodes, weights } = gaussLegendre(n);
      expect(nodes.toSorted((a, b) => a - b)).toEqual(nodes);
      expect(nodes.map((x) => 0 - x).reverse()).toEqual(nodes.map((x) => x + 0));
      expect(Math.min(...weights)).toBeGreaterThan(0);
      // The highest even power that the rule integrates exactly, and the sum of the weights.
      for (const power of [0, 2 * n - 2]) {
        const sum = nodes.reduce((total, x, k) => total + (weights[k] ?? 0) * x ** power, 0);
        expect(Math.abs(sum - 2 / (power + 1))).toBeLessThan(1e-14 /* a few roundings of 2 */);
      }
    },
  );
  it.each([0, 65, 2.5, Number.NaN])('refuses %f nodes', (n) =>
    expect(() => gaussLegendre(n)).toThrow(singular),
  );
});

describe('integrate', () => {
  it('of exp from 0 to 1 with 10 nodes is e - 1 to rounding', () =>
    expect(Math.abs(integrate(Math.exp, 0, 1, 10) - (Math.E - 1))).toBeLessThan(1e-15 /* a few roundings */));
  it('changes sign when the ends are exchanged', () =>
    expect(Math.abs(integrate(Math.exp, 1, 0, 10) + integrate(Math.exp, 0, 1, 10))).toBeLessThan(
      1e-15 /* a few roundings */,
    ));
  it('is not exact beyond degree 2n - 1', () =>
    expect(Math.abs(integrate((x) => x ** 4, -1, 1, 2) - 2 / 5)).toBeGreaterThan(0.1));
  it('refuses a function that is not finite at a node', () =>
    expect(() => integrate((x) => 1 / x, -1, 1, 3)).toThrow(expect.objectContaining({ code: 'non-finite' })));
});
