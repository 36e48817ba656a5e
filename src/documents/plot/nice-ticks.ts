import { DomainError } from '../../quantities/domain-error.ts';

export interface NiceTicks {
  readonly step: number;
  /** Decimals that print every value exactly. */
  readonly digits: number;
  readonly values: readonly number[];
}

/** A range end this close to a tick, in steps, counts as on it: sums such as 0.1 + 0.2 must not lose their last tick. */
const ON_A_TICK = 1e-9;

/**
 * The multiples of 1, 2 or 5 times a power of ten inside a range, with the smallest step that gives no more than `atMost`.
 *
 * Values are formed from decimal text, so 3 x 0.1 is the number 0.3.
 *
 * @param atMost how many ticks there is room for, 2 or more
 * @throws DomainError when the range is empty, not finite or too narrow for its distance from zero, or atMost is below 2
 */
export function niceTicks(low: number, high: number, atMost: number): NiceTicks {
  if (!(atMost >= 2)) throw new DomainError('ticks at most', atMost, '2 or more');
  return smallestStep(low, high, atMost, (step) => [
    Math.ceil(low / step - ON_A_TICK),
    Math.floor(high / step + ON_A_TICK),
  ]);
}

/**
 * The same for an axis that begins and ends on a tick: the values reach outwards over both ends of the range.
 *
 * @param atMost 3 or more, since a range about zero needs a tick at zero and one on either side
 * @throws DomainError as niceTicks
 */
export function niceAxis(low: number, high: number, atMost: number): NiceTicks {
  if (!(atMost >= 3)) throw new DomainError('ticks on an axis at most', atMost, '3 or more');
  return smallestStep(low, high, atMost, (step) => [
    Math.floor(low / step + ON_A_TICK),
    Math.ceil(high / step - ON_A_TICK),
  ]);
}

function smallestStep(
  low: number,
  high: number,
  atMost: number,
  ends: (step: number) => readonly [first: number, last: number],
): NiceTicks {
  const span = high - low;
  if (!Number.isFinite(span) || !(span > ON_A_TICK * Math.max(Math.abs(low), Math.abs(high))))
    throw new DomainError('the span of a range', span, 'finite, and more than a billionth of its ends');
  for (let exponent = Math.floor(Math.log10(span / atMost)) - 1; ; exponent += 1) {
    for (const mantissa of [1, 2, 5]) {
      const step = Number(`${mantissa}e${exponent}`);
      const [first, last] = ends(step);
      const count = last - first + 1;
      if (count > atMost) continue;
      const values = Array.from({ length: count }, (_, i) => Number(`${(first + i) * mantissa}e${exponent}`));
      return { step, digits: Math.max(0, -exponent), values };
    }
  }
}
