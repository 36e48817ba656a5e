import { expect, it } from 'vitest';
import { nextRange } from '../../src/calibration/next-range.ts';
import { si } from '../../src/quantities/quantity.ts';
import { plannedMarkSd } from '../../src/setup/assemble/assemble-marks.ts';
import {
  type Archer,
  type Evening,
  readingErrors,
  rootMeanSquare,
  type ShotAt,
  trial,
} from '../unit/calibration/invented-archers.ts';
import { yards } from '../unit/sight/invented-rig.ts';

/** Enough for a root mean square to about a tenth: the errors of one archer's ranges go together. */
const ARCHERS = 40;
const tape = [20, 40, 60, 80, 100].map(yards);
const TWO_FEET_A_SECOND = 0.6096; // m/s

const scoreOf = (archer: Archer): number =>
  rootMeanSquare(
    Array.from({ length: ARCHERS }, (_, i) => readingErrors(trial(archer, 20261126, i), tape))
      .flat()
      .map(({ score }) => score),
  );

it.each([
  ['a poor', 0.08],
  ['a good', 0.03],
])('%s archer is promised of the next group what the fit then says, to 20 %%', (_, spread) => {
  const shots: readonly ShotAt[] = [20, 30, 40, 50].map((range, i) => ({ range, arrows: 3 + i }));
  const ranges = [20, 40, 60, 80, 100].map((range) => si<'m'>(yards(range)));
  const pairs = Array.from({ length: 12 }, (__, i) => {
    const { setup, calibration } = trial({ shots, spread }, 9, i).open;
    const next = nextRange(calibration, ranges, { sdAt: plannedMarkSd(setup, calibration.rig, 6) });
    const range = Math.round(next.range / yards(1));
    const after = trial({ shots: [...shots, { range, arrows: 6 }], spread }, 9, i);
    return {
      promised: next.rmsAfter,
      said: rootMeanSquare(readingErrors(after, ranges).map(({ sd }) => sd)),
    };
  });
  const ratio =
    rootMeanSquare(pairs.map(({ promised }) => promised)) / rootMeanSquare(pairs.map(({ said }) => said));
  expect(ratio).toBeGreaterThan(1 / 1.2);
  expect(ratio).toBeLessThan(1.2);
});

const steady = (far: Evening): Archer => ({
  spread: 0.015,
  shots: [20, 30, 40, 50, 60, 70, 80].map(
    (range): ShotAt => ({ range, arrows: 12, evening: range >= 50 ? far : {} }),
  ),
});

it('a steady archer whose far marks were shot on a slower evening is told errors that hold: at most 1.5 of them', () =>
  expect(scoreOf(steady({ speed: -TWO_FEET_A_SECOND }))).toBeLessThan(1.5));

it('ordinary archers of one evening are told errors that hold, not far too large ones', () => {
  const arrows = [3, 6, 4, 3, 6];
  const score = scoreOf({
    spread: 0.03,
    rangeError: 0.5,
    shots: [20, 30, 40, 50, 60].map((range, i) => ({ range, arrows: arrows[i] ?? 3 })),
  });
  expect(score).toBeGreaterThan(0.8);
  expect(score).toBeLessThan(1.3);
});
