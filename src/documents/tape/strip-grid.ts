import type { Rank } from './tape-labels.ts';

/** Where things stand across a strip, mm from the edge that the ticks start on. */
export interface StripGrid {
  readonly tick: Readonly<Record<Rank, number>>;
  /** Size of the sign after the ticks of marks; none on a strip that needs the room for its numbers. */
  readonly sign: number | null;
  readonly labelFrom: number;
  /** Kept free for the small type along the other edge; 0 on a strip that needs the room for its numbers. */
  readonly lane: number;
  readonly nearTick: Readonly<Record<Rank, number>>;
  readonly nearLabelFrom: number;
}

/** Strips at least this wide have room, mm, beside numbers with digits 2.5 mm high. */
const ROOM_FOR = { lane: 8.5, signs: 11 };
/** Below this width, mm, a strip has no room for a second column of ticks and numbers on its other edge. */
export const NARROWEST_WITH_NEAR = 10;
export const AFTER_TICK = 0.15;
const BEFORE_LABEL = 0.25;
/** The small type along a strip, and how far it stays from the edge, where the stubs of hairlines are. */
export const LANE = { size: 1.3, inset: 0.5 };
/** Ascenders and descenders of the type, in ems. */
const TYPE_HEIGHT = 1.17;

export function stripGrid(width: number): StripGrid {
  const ten = within(0.22 * width, 1.1, 3.2);
  const sign = width >= ROOM_FOR.signs ? within(0.065 * width, 0.5, 0.8) : null;
  return {
    tick: { ten, five: 0.74 * ten, one: 0.48 * ten },
    sign,
    labelFrom: ten + BEFORE_LABEL + (sign === null ? 0 : AFTER_TICK + sign),
    lane: width >= ROOM_FOR.lane ? LANE.inset + TYPE_HEIGHT * LANE.size : 0,
    nearTick: { ten: 1.1, five: 0.9, one: 0.7 },
    nearLabelFrom: 1.4,
  };
}

const within = (value: number, least: number, most: number): number => Math.min(most, Math.max(least, value));
