import { type Metres, si } from '../../quantities/quantity.ts';
import type { TuningEntry } from '../../setup/schema/schema.ts';

/** Where the rest stood for a round, from places that stay. */
export interface RestPlace {
  readonly right: Metres;
  /** Of the rest over the nocking point. */
  readonly up: Metres;
}

interface Stood {
  readonly right: number;
  readonly up: number;
  readonly nock: number;
  /** Whether this round or an earlier one said so. */
  readonly told: boolean;
}

/** Before anybody moved it, the rest stands where places are counted from. */
const BEGUN: Stood = { right: 0, up: 0, nock: 0, told: false };

/** Where the rest stood for every round: what a round does not say is as it was before. */
export function restMoves(log: readonly TuningEntry[]): readonly Stood[] {
  const places: Stood[] = [];
  let stood = BEGUN;
  for (const { rest_right: right, rest_up: up, nock_up: nock } of log) {
    const told = right !== undefined || up !== undefined || nock !== undefined;
    stood = {
      right: right ?? stood.right,
      up: up ?? stood.up,
      nock: nock ?? stood.nock,
      told: stood.told || told,
    };
    places.push(stood);
  }
  return places;
}

/** A rest is read to a hundredth of a millimetre at best: decimals of a metre. */
const DIGITS = 6;

/** The place of a round as a word, to compare; null where nobody has said yet. */
export function restId(places: readonly Stood[], i: number): string | null {
  const stood = places[i];
  if (stood === undefined || !stood.told) return null;
  return [stood.right, stood.up, stood.nock].map((value) => value.toFixed(DIGITS)).join(' ');
}

export function restPlace(places: readonly Stood[], i: number): RestPlace {
  const stood = places[i] ?? BEGUN;
  return { right: si(stood.right), up: si(stood.up - stood.nock) };
}
