import { describe, expect, it } from 'vitest';
import { type MeasuredArrow, matchedSets } from '../../../../src/advice/tuning/matched-sets.ts';
import { at } from '../../../../src/numerics/at.ts';
import { randomStream } from '../../../../src/numerics/random.ts';
import { GRAIN, INCH } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';

/** in per grain at 50 yd, and one arrow's own scatter there. */
const BOW = { heightPerMass: (0.104 * INCH) / GRAIN, arrowSd: si<'m'>(1.5 * INCH) };
const arrow = (grains: number, own = 0): MeasuredArrow => ({ mass: si(grains * GRAIN), own: si(own * INCH) });

function subsets(from: readonly number[], size: number): readonly (readonly number[])[] {
  if (size === 0) return [[]];
  return from.flatMap((first, i) => subsets(from.slice(i + 1), size - 1).map((rest) => [first, ...rest]));
}

describe('sorting a dozen arrows', () => {
  it.each([1, 2, 3, 4, 5])('the best six are the best of all 924 subsets, dozen %d', (seed) => {
    const { normal, uniform } = randomStream(seed, 7);
    const dozen = Array.from({ length: 12 }, () => arrow(450 + 2 * normal(), 0.4 * uniform()));
    const cost = (set: readonly number[]): number => {
      const masses = set.map((i) => at(dozen, i).mass);
      const mean = masses.reduce((sum, mass) => sum + mass, 0) / masses.length;
      return set.reduce(
        (sum, i) => sum + (BOW.heightPerMass * (at(dozen, i).mass - mean)) ** 2 + at(dozen, i).own ** 2,
        0,
      );
    };
    const all = subsets([...dozen.keys()], 6);
    expect(all).toHaveLength(924);
    const best = all.reduce((least, set) => (cost(set) < cost(least) ? set : least));
    const found = matchedSets({ ...BOW, arrows: dozen, setSize: 6 });
    expect(at(found.sets, 0).arrows).toEqual(best);
    expect(found.sets).toHaveLength(2);
    expect(found.leftOver).toEqual([]);
  });
  it('a crooked arrow is left over', () => {
    const found = matchedSets({ ...BOW, arrows: [arrow(450), arrow(450.2, 0.9), arrow(450.4)], setSize: 2 });
    expect(at(found.sets, 0).arrows).toEqual([0, 2]);
    expect(found.leftOver).toEqual([1]);
  });
  it('weights that scatter 0.16 in cost 0.6 % of a group of 1.5 in, by hand', () => {
    // masses ±d about the mean with sample deviation d √(2·n/2/(n−1)): four arrows, d √(4/3)
    const d = 0.16 / 0.104 / Math.sqrt(4 / 3);
    const found = matchedSets({
      ...BOW,
      arrows: [450 - d, 450 - d, 450 + d, 450 + d].map((m) => arrow(m)),
      setSize: 4,
    });
    expect(found.all.heightSd / INCH).toBeCloseTo(0.16, 9);
    expect(found.groupGrowth).toBeCloseTo(0.0057, 4);
  });
});
