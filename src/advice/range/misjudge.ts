import type { Flyer } from '../../flight/trajectory.ts';
import { NumericalError } from '../../numerics/numerical-error.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { PinPosition } from '../../sight/geometry.ts';
import { noPin } from '../../sight/no-pin.ts';
import type { Rig } from '../../sight/rig.ts';
import { sightIn } from '../../sight/sighted.ts';
import { impact } from '../../sight/zero.ts';
import { rangeOfPin } from './level-range.ts';

/** How far a guess of one range may be off, everything else right, before the hit leaves a ring. */
export interface GuessRoom {
  readonly range: Metres;
  /** Guessed short by this the arrow is at the ring's lower edge; null when no mark is so high. */
  readonly short: Metres | null;
  /** Guessed long by this it is at the upper edge. */
  readonly long: Metres;
  /** Height of the hit for a metre of guess too long, at the right range; negative where marks fall with range, close by. */
  readonly heightPerGuess: number;
}

/** Half the difference of guesses that the slope is taken over, m. */
const STEP = 0.1;

/**
 * The room a ring leaves for guesses of the range, at each of `ranges` (m). A hit counts by the centre of the arrow.
 *
 * @param ring diameter, m
 * @checked without drag: closed forms
 */
export function guessRoom(rig: Rig, ring: number, ranges: readonly number[]): readonly GuessRoom[] {
  const nearby = ranges.flatMap((range) => [range, range - STEP, range + STEP]);
  const { flight, pins, paths } = sightIn(rig, nearby);
  return ranges.map((range, i) => {
    const [pin, shorter, longer] = [pins[3 * i], pins[3 * i + 1], pins[3 * i + 2]];
    if (pin === undefined || shorter === undefined || longer === undefined)
      throw new RangeError(`no pin for range ${i}`);
    const guessAt = (height: number): number | null =>
      rangeOfPin(rig, flight, pinForHeight(rig, flight, pin, range, height), range);
    const [low, high] = [guessAt(-ring / 2), guessAt(ring / 2)];
    if (high === null)
      throw new NumericalError('not-converged', 'a path above the line of sight never crosses it');
    return {
      range: si(range),
      short: low === null ? null : si(range - low),
      long: si(high - range),
      heightPerGuess: (paths.height(longer.down, range) - paths.height(shorter.down, range)) / (2 * STEP),
    };
  });
}

/** A height is met to this, m. */
const MET = 1e-7;
const MAX_STEPS = 30;

/** The pin that puts the arrow at a height above the line of sight. */
function pinForHeight(
  rig: Rig,
  flight: Flyer,
  start: PinPosition,
  range: number,
  height: number,
): PinPosition {
  let pin = start;
  for (let i = 0; i < MAX_STEPS; i += 1) {
    const miss = impact(flight, rig, pin, range).height - height;
    if (Math.abs(miss) < MET) return pin;
    pin = { ...pin, down: pin.down - (miss * rig.geometry.peepToPin) / range };
  }
  throw noPin(`no pin puts the arrow ${height.toPrecision(3)} m off at ${range.toPrecision(3)} m`, range);
}
