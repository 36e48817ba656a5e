import { describe, expect, it } from 'vitest';
import { bracketedRoot, minimumOf } from '../../../src/numerics/root.ts';
import { recorded } from './recorded.ts';
import { MINIMA } from './scipy-minima.ts';
import { ROOTS } from './scipy-roots.ts';

/** Both do the same sums in another order: rounding, magnified by differences of neighbouring values. */
const SAME = 1e-7; // of the interval

describe.each([
  ['bracketedRoot', bracketedRoot, ROOTS, 2],
  ['minimumOf', minimumOf, MINIMA, 0],
] as const)('%s', (_, search, searches, ends) => {
  it.each([...searches])('asks where the general library does: $f from $lo to $hi', (expected) => {
    const { f, lo, hi, tolerance } = expected;
    const { asked, call } = recorded(f);
    const found = search(call, lo, hi, { tolerance });
    const apart = (a: number, b: number | undefined) => Math.abs(a - (b ?? Number.NaN)) / Math.abs(hi - lo);
    expect(asked.length).toBe(expected.asked.length + ends);
    for (const [i, place] of expected.asked.entries())
      expect(apart(place, asked[i + ends])).toBeLessThan(SAME);
    expect(apart(found, expected.found)).toBeLessThan(SAME);
  });
});
