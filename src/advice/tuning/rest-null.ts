import { at } from '../../numerics/at.ts';
import { lineZero } from '../../numerics/fieller.ts';
import { studentQuantile } from '../../numerics/quantiles.ts';
import { lineThrough } from '../../numerics/weighted-line.ts';
import { INCH } from '../../quantities/exact.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import { NOTICED } from './torque-settings.ts';

/** What was read at one place of the rest: a tear, or how far bare shafts hit off, less what a clean start would give. */
export interface RestReading {
  readonly position: Metres;
  readonly reading: Metres;
  /** Of this reading alone. */
  readonly sd: Metres;
}

export interface RestNull {
  readonly position: Metres;
  readonly sd: Metres;
  /** 19 times in 20; null when the readings do not close it. */
  readonly interval: readonly [Metres, Metres] | null;
  /** Metres of reading for a metre of rest. */
  readonly slope: number;
}

/** Whether the reading rises or falls as the rest moves right or up, when all is well. */
export type Expected = 'rises' | 'falls';

export type RestOutcome =
  | { readonly kind: 'null'; readonly null: RestNull }
  /** The reading moved the wrong way, and surely so. */
  | { readonly kind: 'wrong way' }
  /** One place, or places whose readings do not differ enough. */
  | { readonly kind: 'not yet' };

/**
 * Where the rest stands right, from readings at two places of it or more, taken as a straight line in the place.
 *
 * @param shared standard deviation of what all readings share, as the bending of the shaft in tears at one distance: it moves the
 *   null and not the slope
 */
export function restNull(readings: readonly RestReading[], shared: number, expected: Expected): RestOutcome {
  if (new Set(readings.map(({ position }) => position)).size < 2) return { kind: 'not yet' };
  const V = readings.map(({ sd }, i) => readings.map((_, j) => shared * shared + (i === j ? sd * sd : 0)));
  const line = lineThrough(
    readings.map(({ position }) => position),
    readings.map(({ reading }) => reading),
    V,
  );
  const t = studentQuantile(NOTICED, Infinity);
  const right = expected === 'rises' ? line.slope > 0 : line.slope < 0;
  const sure = Math.abs(line.slope) > t * Math.sqrt(at(at(line.covariance, 1), 1));
  if (!right) return { kind: sure ? 'wrong way' : 'not yet' };
  const { place, sd, interval } = lineZero(line, t);
  if (interval === null) return { kind: 'not yet' };
  return {
    kind: 'null',
    null: {
      position: si(place),
      sd: si(sd),
      interval: [si(interval[0]), si(interval[1])],
      slope: line.slope,
    },
  };
}

/** The first move and the largest later one; the half of the first for a small fault. Common practice: 1/32 in at a time. */
const FIRST_MOVE = INCH / 32;
const LARGEST_MOVE = INCH / 16;

/**
 * How far to move the rest next, right or up positive.
 *
 * @param fault what is read now, less what a clean start gives
 * @param small faults below this are met with half the first move
 */
export function nextMove(
  outcome: RestOutcome,
  present: number,
  fault: number,
  small: number,
  expected: Expected,
): Metres {
  if (outcome.kind === 'null') {
    const whole = outcome.null.position - present;
    return si(Math.max(-LARGEST_MOVE, Math.min(LARGEST_MOVE, whole)));
  }
  if (fault === 0) return si(0);
  const size = Math.abs(fault) < small ? FIRST_MOVE / 2 : FIRST_MOVE;
  // A reading that rises with the rest is brought down by moving the other way.
  return si(expected === 'rises' ? -Math.sign(fault) * size : Math.sign(fault) * size);
}
