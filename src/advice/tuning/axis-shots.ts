import { DEGREE } from '../../quantities/exact.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import { meanOf } from './sample.ts';

/**
 * An axis of the sight is right when it is off by no more than this, or by no more than two of its errors when those are smaller;
 * shots that would not show half a degree say neither.
 */
const GOOD_ENOUGH: Radians = si(0.25 * DEGREE);
/** The error that so many arrows each way should show. */
const SHOWN: Radians = si(0.5 * DEGREE);
/** A cant is read off a level to this, and the pin off a plumb line to a hundredth of an inch; assumed. */
const CANT_SD: Radians = si(0.1 * DEGREE);
const PLUMB_SD: Metres = si(0.254e-3);
/** So many standard errors are shown. */
const SHOWN_FROM = 2;

export interface AxisError {
  readonly error: Radians;
  readonly sd: Radians;
  readonly shown: boolean;
  readonly done: boolean;
}

const judged = (error: number, sd: number): AxisError => ({
  error: si(error),
  sd: si(sd),
  shown: Math.abs(error) > SHOWN_FROM * sd,
  done:
    (Math.abs(error) < GOOD_ENOUGH && sd <= SHOWN) ||
    (sd < GOOD_ENOUGH && Math.abs(error) <= SHOWN_FROM * sd),
});

export interface SlopeShots {
  readonly range: Metres;
  readonly slope: Radians;
  /** Hits, right positive. */
  readonly uphill: readonly Metres[];
  readonly downhill: readonly Metres[];
  /** Of the path below the line of its launch at that range. */
  readonly drop: Metres;
  /** Standard deviation of one arrow per metre of range. */
  readonly arrowSd: number;
}

/**
 * The error of the third axis from shots up and down one slope at one range; the level's right end ahead of its left, positive.
 *
 *   right uphill − right downhill = 2 d tan e tan a
 *
 * Windage, a wind that holds and the second axis cancel.
 */
export function thirdAxisFromSlopes({ range, slope, uphill, downhill, drop, arrowSd }: SlopeShots) {
  const lever = 2 * drop * Math.tan(slope);
  const error = Math.atan((meanOf(uphill) - meanOf(downhill)) / lever);
  const hitSd = arrowSd * range;
  const sd = (hitSd * Math.sqrt(1 / uphill.length + 1 / downhill.length) * Math.cos(error) ** 2) / lever;
  return {
    ...judged(error, sd),
    cantUphill: si<'rad'>(Math.asin(Math.tan(error) * Math.tan(slope))),
    /** Arrows each way whose error would be half a degree. */
    arrowsToShow: Math.ceil(2 * (hitSd / (lever * SHOWN)) ** 2),
  };
}

/**
 * The error of the third axis from the cant of a bow in a vice, tipped front up by `tipped`, with its bubble centred; clockwise
 * positive.
 *
 *   sin(cant) = tan e tan(tipped)
 */
export function thirdAxisOnBench(tipped: Radians, cant: Radians) {
  const error = Math.atan(Math.sin(cant) / Math.tan(tipped));
  const sd = (CANT_SD * Math.cos(cant) * Math.cos(error) ** 2) / Math.tan(tipped);
  return { ...judged(error, Math.abs(sd)), cantUphill: cant, arrowsToShow: null };
}

/** The lean of the bar from how far the pin wanders right of a plumb line as it is run up; clockwise positive. */
export function secondAxisByPlumb(run: Metres, aside: Metres): AxisError {
  const lean = Math.atan2(aside, run);
  return judged(lean, (PLUMB_SD / run) * Math.cos(lean) ** 2);
}

/** Misses of a bar that leans, by range, from the travel of the pin below its zero; right positive. */
export const leanMisses = (
  lean: Radians,
  peepToPin: Metres,
  marks: readonly { readonly range: Metres; readonly travel: Metres }[],
): readonly { readonly range: Metres; readonly lateral: Metres }[] =>
  marks.map(({ range, travel }) => ({
    range,
    lateral: si((range * travel * Math.tan(lean)) / peepToPin),
  }));
