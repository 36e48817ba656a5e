import { describe, expect, it } from 'vitest';
import { type HitGroup, middleOf, spreadOf, usualSpread, wildArrows } from '../../../src/calibration/hits.ts';
import { at } from '../../../src/numerics/at.ts';
import { randomStream } from '../../../src/numerics/random.ts';
import { si } from '../../../src/quantities/quantity.ts';

/** 0.03 in/yd as a pure number. */
const USUAL = usualSpread(0.03 / 36);
const spread = 0.02 / 36;

/** Groups of round normal arrows of one archer. */
function evening(seed: number, counts: readonly number[]): readonly HitGroup[] {
  const { normal } = randomStream(seed, 0);
  return counts.map((count, i) => {
    const range = si<'m'>(20 + 15 * i);
    const sd = spread * range;
    return {
      range,
      hits: Array.from({ length: count }, () => ({ right: sd * normal(), high: sd * normal() })),
    };
  });
}

describe('middle and spread of hits', () => {
  const hits = [
    { right: 0, high: 0 },
    { right: 2, high: 0 },
    { right: 1, high: 3 },
  ];
  // By hand: middle (1, 1); squares 1+1, 1+1, 0+4 = 8; 8/(2 x 2) = 2.
  it('of three by hand', () => {
    expect(middleOf(hits)).toEqual({ right: 1, high: 1 });
    expect(spreadOf(hits)).toBeCloseTo(Math.SQRT2, 12);
  });
  it('of one there is no spread', () => expect(() => spreadOf(hits.slice(0, 1))).toThrow(RangeError));
});

describe('wild arrows', () => {
  it('are at most twenty: more are no exceptions', () => {
    // Each three times as far as the one before, so that none hides another.
    const groups = evening(3, [60]).map(({ range, hits }) => ({
      range,
      hits: hits.map((hit, i) => (i < 25 ? { ...hit, high: 3 ** i } : hit)),
    }));
    expect(wildArrows(groups, USUAL)).toHaveLength(20);
  });
  it('are named in at most 8 of 200 evenings without any: one in a hundred is meant', () => {
    const named = Array.from(
      { length: 200 },
      (_, seed) => wildArrows(evening(seed, [3, 6, 4]), USUAL).length,
    );
    expect(named.filter((count) => count > 0).length).toBeLessThan(9 /* 2 ± 1.4 are meant */);
  });

  it('eight spreads off are found, alone, in nine evenings of ten', () => {
    const right = Array.from({ length: 100 }, (_, seed) => {
      const groups = evening(seed, [6, 6]);
      const [near, far] = groups;
      if (near === undefined || far === undefined) throw new RangeError('two groups');
      const off = { right: 8 * spread * far.range, high: 0 };
      const found = wildArrows([near, { ...far, hits: far.hits.with(2, off) }], USUAL);
      return found.length === 1 && found[0]?.group === 1 && found[0].arrow === 2;
    });
    expect(right.filter(Boolean).length).toBeGreaterThan(89);
  });

  it('two in one evening do not hide each other', () => {
    const groups = evening(5, [6, 6]).map(({ range, hits }) => ({
      range,
      hits: hits.with(0, { right: 0, high: -15 * spread * range }),
    }));
    expect(wildArrows(groups, USUAL).map(({ arrow }) => arrow)).toEqual([0, 0]);
  });

  it('of two arrows neither is the wild one', () =>
    expect(
      wildArrows(
        [
          {
            range: si(50),
            hits: [
              { right: 0, high: 0 },
              { right: 1, high: 0 },
            ],
          },
        ],
        USUAL,
      ),
    ).toEqual([]));
});

describe('the chance that an arrow lies so far off by itself', () => {
  const three = [
    { right: 1, high: 0 },
    { right: -1, high: 0 },
    { right: 0, high: 3 },
  ];
  const far = { right: 20, high: 1 };
  const range = si<'m'>(10);

  it('is that of F with 2 and n degrees of freedom, for as many arrows as there are', () => {
    // By hand: the middle of the others is (0, 1), their squares about it 8; the usual spread of 0.1 m per m counts for four
    // degrees of freedom, 0.04, so 0.12 in all with 4 + 4 of them; 12 m² at 10 m. F = 400·8/(2·12·4/3) = 100.
    const [wild, ...others] = wildArrows([{ range, hits: [...three, far] }], usualSpread(0.1));
    expect(others).toEqual([]);
    expect(wild).toMatchObject({ group: 0, arrow: 3 });
    expect(wild?.chance).toBeCloseTo(4 * (1 + 200 / 8) ** -4, 12);
  });

  it('is the same wherever on the target the group is', () => {
    const chanceAt = (right: number, high: number) => {
      const hits = [...three, far].map((hit) => ({ right: hit.right + right, high: hit.high + high }));
      return wildArrows([{ range, hits }], usualSpread(0.1))[0]?.chance ?? Number.NaN;
    };
    expect(chanceAt(7, 0)).toBeCloseTo(chanceAt(0, 0), 12);
    expect(chanceAt(0, -9)).toBeCloseTo(chanceAt(0, 0), 12);
  });

  it('can be told of one of three, and not of two', () => {
    const two = three.slice(0, 2);
    expect(wildArrows([{ range, hits: [...two, far] }], usualSpread(0.01))).toHaveLength(1);
    expect(wildArrows([{ range, hits: [at(two, 0), far] }], usualSpread(0.01))).toEqual([]);
  });

  it('does not hang on a group of which nothing was measured', () => {
    const groups = [{ range, hits: [...three, far] }];
    expect(wildArrows([...groups, { range, hits: [] }], usualSpread(0.1))).toEqual(
      wildArrows(groups, usualSpread(0.1)),
    );
  });
});
