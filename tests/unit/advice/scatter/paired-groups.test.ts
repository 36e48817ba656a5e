import { describe, expect, it } from 'vitest';
import { pairedGroups } from '../../../../src/advice/scatter/paired-groups.ts';
import { randomStream } from '../../../../src/numerics/random.ts';

/** Hits at one range, normal with a standard deviation, the same numbers for every build. */
const hits = (sd: number, arrows = 480): Float64Array =>
  Float64Array.from(
    Array.from({ length: arrows }, (_, i) => {
      const { normal } = randomStream(3, i);
      return [sd * normal(), sd * normal()];
    }).flat(),
  );

describe('pairedGroups', () => {
  it('of twins differ in nothing, surely', () => {
    const [only] = pairedGroups(hits(1), hits(1), 1, 12);
    expect(only?.difference).toEqual({ value: 0, sd: 0, real: false, mostly: null });
  });
  it('of a build that spreads a tenth more are a tenth larger, and surely so although groups vary', () => {
    const [only] = pairedGroups(hits(1), hits(1.1), 1, 12);
    const { value = 0, sd = 0, real } = only?.difference ?? {};
    expect(Math.abs(value / ((only?.group ?? 0) - value) - 0.1)).toBeLessThan(1e-12 /* of the group */);
    expect(real).toBe(true);
    // Unpaired, 40 groups of 12 with a spread of 17 % each would leave 3.8 % of the group; the difference keeps a tenth of it.
    expect(sd / (only?.group ?? 1)).toBeLessThan(0.004);
  });
  it('a dozen span 3.988 standard deviations on average, to three errors of 40 groups (table of calibration/group.ts)', () => {
    const [only] = pairedGroups(hits(1), hits(1), 1, 12);
    expect(Math.abs((only?.group ?? 0) / 3.988 - 1)).toBeLessThan(
      0.08 /* relative: a group varies by 17 %, 40 of them by 2.7 % */,
    );
  });
  it('reads each range on its own', () => {
    const two = Float64Array.from(
      Array.from({ length: 24 }, (_, i) => {
        const { normal } = randomStream(5, i);
        const [y, z] = [normal(), normal()];
        return [y, z, 2 * y, 2 * z];
      }).flat(),
    );
    const [near, far] = pairedGroups(two, two, 2, 12);
    expect(Math.abs((far?.group ?? 0) / (near?.group ?? 1) - 2)).toBeLessThan(1e-12 /* relative, rounding */);
  });
});
