import { at } from '../numerics/at.ts';
import { forwardSolve } from '../numerics/cholesky.ts';
import { quadraticForm } from '../numerics/quadratic-form.ts';
import { FOOT } from '../quantities/exact.ts';
import type { Calibration } from './fit.ts';
import type { Day } from './measurement.ts';
import { besideOf, withParameters } from './parameters.ts';
import { changeShifts } from './prediction.ts';

/** What may have changed on a bow: peep and pin move the arrow alike and cannot be told apart. */
const BOW_CAUSES = ['launch_speed', 'peep_or_sight', 'drag'] as const;
export type BowCause = (typeof BOW_CAUSES)[number];

/** A change of the bow that explains the days better than a bow that stayed as it was. */
export interface BowChange {
  /** The first day with the change. */
  readonly since: string;
  readonly cause: BowCause;
  /** m/s faster, m that the peep went up (or the pin down), or share of drag more; with its standard error, not widened. */
  readonly size: number;
  readonly sd: number;
  /** That this is what has changed, and since when. */
  readonly chance: number;
  /** That the bow has changed at all. */
  readonly chanceOfAny: number;
}

/**
 * One standard deviation of what a bow changes by where it does change.
 *
 * @source common practice, no source: a stretched string or a turned limb bolt costs 5 ft/s; a peep slips by 1.5 mm; other vanes
 *   or points have a tenth more drag
 */
const USUAL_CHANGE = { speed: 5 * FOOT, sight: 1.5e-3, drag: 0.1 };
const SIZES: Readonly<Record<BowCause, number>> = {
  launch_speed: USUAL_CHANGE.speed,
  peep_or_sight: USUAL_CHANGE.sight,
  drag: USUAL_CHANGE.drag,
};
/** Before the marks: that a bow with which several days were shot has changed between them. @source ours */
const CHANGED_BEFORE = 0.1;
/** From this chance on a change is named. */
const NAMED = 0.9;

/**
 * What has changed on the bow between the days of a fit, and since when; null where nothing is likely to have.
 *
 * For every day but the first and every cause, a shift x of all that was measured from that day on is freed:
 *
 *   ln B = (x' V^-1 r)²/2(1 + S) - ln(1 + S)/2,   S = x' (V^-1 - V^-1 J C J' V^-1) x
 *
 * x for one standard deviation of the change; the sum over all, with their chances before, is the chance that the bow changed.
 *
 * @source Bayes factor of one normal coefficient in a linear model: MacKay, Information Theory, Inference, and Learning
 *   Algorithms, 2003, chapter 28
 */
export function bowChange({ problem, values, linear }: Calibration): BowChange | null {
  const { measurements, rig } = problem;
  const days = inOrder(measurements.map(({ day }) => day));
  if (days.length < 2) return null;
  const shifts = changeShifts(withParameters(rig, values), measurements, USUAL_CHANGE, besideOf(values));
  const changes = days.slice(1).flatMap((since, k) => {
    const after = new Set(days.slice(k + 1));
    return BOW_CAUSES.map((cause, c) => {
      const x = measurements.map(({ day }, i) => (after.has(day) ? at(at(shifts, i), c) : 0));
      const { score, information } = freed(linear, x);
      return {
        since,
        cause,
        size: (score / (1 + information)) * SIZES[cause],
        sd: SIZES[cause] / Math.sqrt(1 + information),
        logFactor: score ** 2 / (2 * (1 + information)) - Math.log1p(information) / 2,
      };
    });
  });
  const each = CHANGED_BEFORE / changes.length;
  const odds = changes.map(({ logFactor }) => each * Math.exp(Math.min(logFactor, LARGEST)));
  const all = odds.reduce((sum, value) => sum + value, 0);
  const chanceOfAny = all / (all + 1 - CHANGED_BEFORE);
  const place = odds.indexOf(Math.max(...odds));
  const { since, logFactor: _, ...change } = at(changes, place);
  if (chanceOfAny < NAMED || since === null) return null;
  return { ...change, since, chance: (at(odds, place) / all) * chanceOfAny, chanceOfAny };
}
/** Beyond this a factor is as good as certain, and its exponential stays finite. */
const LARGEST = 300;

/** How strongly the residuals ask for a shift, and how much they could tell of it. */
function freed(
  { factor, jacobian, residuals, covariance }: Calibration['linear'],
  x: readonly number[],
): { readonly score: number; readonly information: number } {
  const whitened = forwardSolve(factor, x);
  const pull = covariance.map((_, j) =>
    whitened.reduce((sum, value, i) => sum + value * at(at(jacobian, i), j), 0),
  );
  const size = whitened.reduce((sum, value) => sum + value * value, 0);
  return {
    score: whitened.reduce((sum, value, i) => sum + value * at(residuals, i), 0),
    information: Math.max(0, size - quadraticForm(covariance, pull)),
  };
}

const ISO_DATE = /^\d{4}-\d{2}-\d{2}/;

/** The days one after another: what names none first, then by date where all have one, else as they stand in the file. */
function inOrder(days: readonly Day[]): readonly Day[] {
  const different = [...new Set(days)];
  const named = different.flatMap((day) => (day === null ? [] : [day]));
  const sorted = named.every((day) => ISO_DATE.test(day)) ? named.toSorted() : named;
  return different.includes(null) ? [null, ...sorted] : sorted;
}
