import { YARD } from '../../../quantities/exact.ts';
import { atRange } from '../lengths.ts';
import { CHANGE_WORDS, staleMarks, undatedMarks } from '../stale-marks.ts';
import { type Evening, NO_MORE, type StepAnswer } from '../step-answer.ts';

/** A tape is worth printing from marks that reach as far. */
const FAR_ENOUGH = 60 * YARD;
const ROUNDING = 1e-6;

/** Whether the setup has marks, and whether they were shot with the bow as it stands. */
export function marksAnswer(evening: Evening): StepAnswer {
  const { setup, units } = evening.session;
  const marks = (setup.marks ?? []).filter(({ reading }) => reading !== undefined);
  const farthest = Math.max(0, ...marks.map(({ range }) => range));
  const stale = staleMarks(setup, evening);
  const reached = farthest >= FAR_ENOUGH - ROUNDING;
  return {
    ...NO_MORE,
    verdict: verdictOf(),
    done: reached && stale === null,
    line: lineOf(),
    data: {
      farthest_m: marks.length === 0 ? null : farthest,
      stale_ranges_m: stale === null ? [] : stale.ranges,
      undated: undatedMarks(setup),
    },
  };

  function verdictOf(): string {
    if (stale !== null) return 'stale';
    return reached ? 'reached' : 'short';
  }

  function lineOf(): string {
    if (stale !== null)
      return (
        `Shoot the marks anew: those at ${stale.ranges.map((range) => atRange(range, units)).join(', ')} were shot before ` +
        `${stale.changes.map((change) => CHANGE_WORDS[change]).join(' and ')} changed on ${stale.date}.`
      );
    if (marks.length === 0) return 'No marks yet: shoot groups at 20, 40 and 60 yd.';
    return reached
      ? `The marks reach ${atRange(farthest, units)}.`
      : `The marks reach ${atRange(farthest, units)}: shoot one at 60 yd.`;
  }
}
