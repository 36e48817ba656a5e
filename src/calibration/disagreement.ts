import { at } from '../numerics/at.ts';
import { normalCumulative } from '../numerics/distributions.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import { type Agreement, agreementOf, type Tried } from './agreement.ts';
import { atBounds, type Calibration, type CalibrationProblem } from './fit.ts';
import { type LeftOut, leftOut, without } from './left-out.ts';
import { type Backwards, backwards } from './mark-order.ts';
import type { Measurement } from './measurement.ts';
import { AGREES, type OneNumber, oneNumbers } from './one-number.ts';
import { otherUnitOf } from './other-unit.ts';

/** One thing that, were it otherwise, would make all else agree. */
type Explanation =
  /** A measurement that does not belong; by its place in the problem. */
  { readonly kind: 'mark'; readonly index: number; readonly measurement: Measurement } | OneNumber;

/** An explanation and how well all would agree with it. */
export interface Explained extends Tried {
  readonly explanation: Explanation;
}

/** What measurements have against one another. */
export interface Disagreement {
  /** Whether they contradict one another outright: then nothing that rests on them is to be used. */
  readonly isContradiction: boolean;
  /** Of all of them together; null where no fit to all of them was found. */
  readonly agreement: Agreement | null;
  /** What would explain it, the best first; one alone is as good as certain. None where no single thing would. */
  readonly explanations: readonly Explained[];
  /** Several measurements without which the rest agree, worst first, where no single thing explains it; else none. */
  readonly together: readonly Measurement[];
  /** What stands out most, where nothing explains it. */
  readonly worst: readonly Measurement[];
  /** Marks that run back against range. */
  readonly order: readonly Backwards[];
  /** The fit without what was named as wrong; null where nothing was. */
  readonly rest: Calibration | null;
}

/** Studentised residuals beyond this are called outliers: one in 370 of good groups would be. */
export const OUTLIER = 3;
/** Good marks are said to contradict one another this often by their sum of squares, and as often by their largest residual. */
const CONTRADICTION_CHANCE = 0.001;
/**
 * One explanation is taken and another dropped when chi-squared over what is expected differs by this: the likelihoods are then
 * as 90 to 1.
 */
const APART = 9;
/** Of several wrong marks at most so many are named, and at most a third of all. */
const MOST_TOGETHER = 4;
/** So many of what nothing explains are worth naming. */
const WORST_NAMED = 3;

/**
 * What the measurements of a fit have against one another; null where nothing stands out.
 *
 * The largest residual is no guide with few marks. What is named is the one thing without which all the rest agrees: a
 * measurement left out, or one number of the file that were another. Where several would do, all of them are listed.
 */
export function disagreementOf(calibration: Calibration): Disagreement | null {
  if (calibration.residuals.length === 0) return null;
  const agreement = agreementOf(calibration);
  const isContradiction = contradicts(calibration, agreement);
  const isDoubtful = Math.max(0, ...sizesOf(calibration)) > OUTLIER;
  const all = { calibration, agreement };
  return isContradiction || isDoubtful
    ? searched(calibration.problem, all, isContradiction)
    : inOtherUnits(all);
}

/** Marks that agree may agree far better in the other unit. */
function inOtherUnits(all: Tried): Disagreement | null {
  const found = otherUnitOf(all);
  if (found === null) return null;
  const { cause, ...better } = found;
  return {
    isContradiction: false,
    agreement: all.agreement,
    explanations: [{ ...better, explanation: cause }],
    together: [],
    worst: [],
    order: [],
    rest: null,
  };
}

/** The same for measurements to which no fit was found; null where there are none. */
export const disagreementUnfitted = (problem: CalibrationProblem): Disagreement | null =>
  problem.measurements.length === 0 ? null : searched(problem, null, true);

const sizesOf = ({ residuals }: Calibration): readonly number[] =>
  residuals.map(({ studentised }) => Math.abs(studentised));

/** The largest of n residuals is allowed what the largest of n good ones would be: the chance of one times n. */
function contradicts(calibration: Calibration, { chance }: Agreement): boolean {
  const sizes = sizesOf(calibration);
  const ofLargest = 2 * normalCumulative(-Math.max(0, ...sizes)) * sizes.length;
  return Math.min(chance, ofLargest) < CONTRADICTION_CHANCE || atBounds(calibration).length > 0;
}

function searched(problem: CalibrationProblem, all: Tried | null, isContradiction: boolean): Disagreement {
  const { measurements } = problem;
  const singles = leftOut(problem, all?.calibration ?? null);
  const explanations = best(
    [...singles.map((one) => asMark(problem, one)), ...otherNumbers(problem, all)],
    all,
  );
  const [first, second] = explanations;
  const [sole] = second === undefined && first?.explanation.kind === 'mark' ? [first] : [];
  const several = explanations.length > 0 ? null : together(problem, singles);
  return {
    isContradiction,
    agreement: all?.agreement ?? null,
    explanations,
    together: several === null ? [] : several.indices.map((index) => at(measurements, index)),
    worst: explanations.length > 0 || several !== null ? [] : worstOf(all, measurements),
    order: orderOf(problem),
    rest: sole?.calibration ?? several?.calibration ?? null,
  };
}

const asMark = ({ measurements }: CalibrationProblem, { index, ...found }: LeftOut): Explained => ({
  ...found,
  explanation: { kind: 'mark', index, measurement: at(measurements, index) },
});

const otherNumbers = (problem: CalibrationProblem, all: Tried | null): readonly Explained[] =>
  oneNumbers(problem, all?.calibration ?? null).map(({ cause, ...found }) => ({
    ...found,
    explanation: cause,
  }));

/** Less is better: chi-squared beyond what is expected of it. */
const scoreOf = ({ agreement: { chiSquared, freedom } }: Pick<Tried, 'agreement'>): number =>
  chiSquared - freedom;

/** Those that explain enough, the best first, down to those that the best does not rule out. */
function best(found: readonly Explained[], all: Tried | null): readonly Explained[] {
  const enough = found.filter(
    (one) => one.agreement.chance >= AGREES && (all === null || scoreOf(one) < scoreOf(all)),
  );
  const least = Math.min(...enough.map(scoreOf));
  return enough
    .filter((one) => scoreOf(one) <= least + APART)
    .toSorted((a, b) => scoreOf(a) - scoreOf(b))
    .filter((one, i, ordered) => ordered.findIndex((other) => isAlike(one, other)) === i);
}

/** Ranges in the other unit are one explanation, whether or not the zero range is among them. */
const isAlike = ({ explanation: one }: Explained, { explanation: other }: Explained): boolean =>
  one === other ||
  (one.kind === 'other unit' && other.kind === 'other unit' && one.written === other.written);

interface Together {
  readonly indices: readonly number[];
  readonly calibration: Calibration;
}

/** Take away what helps most, again and again, as long as one stands out from the others; null where that leads nowhere. */
function together(problem: CalibrationProblem, singles: readonly LeftOut[]): Together | null {
  const { measurements } = problem;
  const most = Math.min(MOST_TOGETHER, Math.floor(measurements.length / 3));
  let gone: readonly number[] = [];
  let tries = singles;
  while (gone.length < most) {
    const [next, rival] = tries.toSorted((a, b) => scoreOf(a) - scoreOf(b));
    if (next === undefined || (rival !== undefined && scoreOf(rival) < scoreOf(next) + APART)) return null;
    gone = [...gone, next.index];
    if (next.agreement.chance >= AGREES) return { indices: gone, calibration: next.calibration };
    const left = measurements.flatMap((_, i) => (gone.includes(i) ? [] : [i]));
    tries = leftOut(without(problem, gone), next.calibration).map((one) => ({
      ...one,
      index: at(left, one.index),
    }));
  }
  return null;
}

const worstOf = (all: Tried | null, measurements: readonly Measurement[]): readonly Measurement[] =>
  all === null
    ? measurements.slice(0, WORST_NAMED)
    : all.calibration.residuals
        .toSorted((a, b) => Math.abs(b.studentised) - Math.abs(a.studentised))
        .slice(0, WORST_NAMED)
        .map(({ measurement }) => measurement);

/** An arrow that does not get to a range says nothing of the order of its marks. */
function orderOf(problem: CalibrationProblem): readonly Backwards[] {
  try {
    return backwards(problem);
  } catch (error) {
    if (error instanceof NumericalError) return [];
    throw error;
  }
}
