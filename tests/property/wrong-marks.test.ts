import { describe, expect, it } from 'vitest';
import { markUncertainty } from '../../src/calibration/mark-uncertainty.ts';
import { at } from '../../src/numerics/at.ts';
import { ask } from '../../src/reports/ask.ts';
import { ContradictionError } from '../../src/reports/asked/contradiction-error.ts';
import { type OpenSetup, openSetup } from '../../src/setup/open.ts';
import { SetupError } from '../../src/setup/problem.ts';
import { marksFor } from '../../src/sight/marks.ts';
import { type Case, SLIPS, type Slip, slipped } from './slipped-archers.ts';

/** What became of one file: refused by the reader, refused as a contradiction, or made into a tape. */
type Outcome =
  | { readonly kind: 'refused' }
  | { readonly kind: 'contradiction'; readonly open: OpenSetup }
  | { readonly kind: 'tape'; readonly open: OpenSetup; readonly warnings: readonly string[] };

const HUNDRED_YARDS = 91.44; // m
const FOUR_INCHES = 0.1016; // m

async function outcomeOf({ text }: Case): Promise<Outcome> {
  try {
    const open = openSetup(text, 'archer.yaml');
    try {
      const { data } = await ask('tape', open);
      const warnings = 'warnings' in data && Array.isArray(data.warnings) ? data.warnings.map(String) : [];
      return { kind: 'tape', open, warnings };
    } catch (error) {
      if (error instanceof ContradictionError) return { kind: 'contradiction', open };
      throw error;
    }
  } catch (error) {
    if (error instanceof SetupError) return { kind: 'refused' };
    throw error;
  }
}

/** Whether the 100 yd mark misses the target by more than three stated standard errors and by more than 4 in. */
function isFarOff({ real }: Case, { calibration }: OpenSetup): boolean {
  const table = marksFor(calibration.rig, [HUNDRED_YARDS]);
  const { heightPerUnit, onTargetSd } = at(markUncertainty(calibration, table), 0);
  const said = at(table.marks, 0).reading ?? Number.NaN;
  const real100 = at(marksFor(real, [HUNDRED_YARDS]).marks, 0).reading ?? Number.NaN;
  const off = Math.abs((said - real100) * heightPerUnit);
  return !(off <= Math.max(3 * onTargetSd, FOUR_INCHES));
}

const SEED = 11;
/** So many archers for each kind of slip: twelve bows and lists of ranges. */
const EACH = 12;
const cases = (slip: Slip): readonly Case[] =>
  Array.from({ length: EACH }, (_, i) => slipped(slip, SEED, i)).filter((one) => one !== null);

describe('of wrong marks', () => {
  it.each(SLIPS)('%s: none gives a tape that misses at 100 yd without a word on it', async (slip) => {
    const seen = cases(slip);
    expect(seen.length).toBeGreaterThan(EACH / 3);
    for (const one of seen) {
      const outcome = await outcomeOf(one);
      if (outcome.kind === 'tape' && isFarOff(one, outcome.open))
        expect(outcome.warnings, `${one.bow}\n${one.text}`).not.toEqual([]);
    }
  });

  it('the one that is named alone is the one that was written wrong, in at least nineteen of twenty', async () => {
    const named = SLIPS.flatMap(cases).flatMap((one) => {
      try {
        const [first, second] = openSetup(one.text, 'archer.yaml').disagreement?.explanations ?? [];
        return second === undefined && first?.explanation.kind === 'mark'
          ? [{ said: first.explanation.measurement.range / 0.9144, wrong: one.wrong }]
          : [];
      } catch (error) {
        if (error instanceof SetupError) return [];
        throw error;
      }
    });
    const right = named.filter(({ said, wrong }) => wrong !== null && Math.abs(said - wrong) < 0.01 /* yd */);
    expect(named.length).toBeGreaterThan(10);
    expect(right.length / named.length).toBeGreaterThanOrEqual(0.95);
  });
});

it('of sixty honest archers at most one is refused', async () => {
  const honest = Array.from({ length: 60 }, (_, i) => slipped('none', SEED, i)).filter((one) => one !== null);
  expect(honest).toHaveLength(60);
  const outcomes = await Promise.all(honest.map(outcomeOf));
  expect(outcomes.filter(({ kind }) => kind !== 'tape').length).toBeLessThanOrEqual(1);
});
