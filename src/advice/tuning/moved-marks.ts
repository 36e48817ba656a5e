import { type Metres, si } from '../../quantities/quantity.ts';

/** A mark before and after the sight moved along its bar. */
export interface MovedMark {
  readonly range: Metres;
  readonly before: Metres;
  readonly after: Metres;
  /** How high the arrow hits with the mark of before, after a new zero. */
  readonly oldTapeMiss: Metres;
}

/**
 * Marks after the pin has come to another distance from the peep: flight and launch angles stay, so that every travel goes
 * as that
 * distance, exactly.
 *
 *   travel' = travel E'/E,   the old tape then misses by R travel (1/E' − 1/E), to first order
 */
export const movedMarks = (
  marks: readonly { readonly range: Metres; readonly travel: Metres }[],
  before: Metres,
  after: Metres,
): readonly MovedMark[] =>
  marks.map(({ range, travel }) => ({
    range,
    before: travel,
    after: si((travel * after) / before),
    oldTapeMiss: si(range * travel * (1 / after - 1 / before)),
  }));
