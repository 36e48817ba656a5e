import { INCH } from '../../quantities/exact.ts';
import {
  type Joules,
  type Metres,
  type MetresPerSecond,
  type Newtons,
  si,
} from '../../quantities/quantity.ts';

/** Differences that go unnoticed, and those beyond which a draw length is wrong, m: common practice, no source. */
const MATCHED_BELOW = INCH / 8;
const WRONG_ABOVE = INCH / 4;
/** What the rounding of inches to metres may shift, m. */
const ROUNDING = 1e-9;

type DrawBand = 'matched' | 'matters' | 'wrong';

export interface DrawQuestion {
  readonly measured: Metres;
  readonly match: Metres;
  readonly powerStroke: Metres;
  readonly speed: MetresPerSecond;
  /** Of arrow and bow's virtual mass together at that speed. */
  readonly energy: Joules;
  readonly peakDraw: Newtons | null;
  readonly holdingWeight: Newtons | null;
  readonly stopGap: Metres | null;
}

export interface DrawLength {
  /** Measured less what it should be. */
  readonly difference: Metres;
  readonly band: DrawBand;
  /** What going to the match would change the speed by. */
  readonly speedChange: {
    /** By a new module: energy goes as power stroke. */
    readonly scaled: MetresPerSecond;
    /** If the whole difference were drawn at peak force: the most it can be; null without the draw weight. */
    readonly peak: MetresPerSecond | null;
    /** By creeping off the wall: at the holding weight; null without it. */
    readonly creep: MetresPerSecond | null;
  };
  readonly done: boolean;
}

/**
 * A draw length beside what it should be, and what the difference is worth.
 *
 *   scaled −v d/2L,  peak −v F d/2E,  creep −v F_hold d/2E
 */
export function drawLength(question: DrawQuestion): DrawLength {
  const { measured, match, powerStroke, speed, energy, peakDraw, holdingWeight, stopGap } = question;
  const difference = measured - match;
  const atForce = (force: Newtons | null): MetresPerSecond | null =>
    force === null ? null : si((-speed * force * difference) / (2 * energy));
  const band = bandOf(Math.abs(difference));
  return {
    difference: si(difference),
    band,
    speedChange: {
      scaled: si((-speed * difference) / (2 * powerStroke)),
      peak: atForce(peakDraw),
      creep: atForce(holdingWeight),
    },
    done: band === 'matched' && (stopGap === null || stopGap === 0),
  };
}

function bandOf(difference: number): DrawBand {
  if (difference < MATCHED_BELOW - ROUNDING) return 'matched';
  return difference <= WRONG_ABOVE + ROUNDING ? 'matters' : 'wrong';
}
