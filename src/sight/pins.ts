import { bracketedRoot } from '../numerics/root.ts';
import { type Metres, si } from '../quantities/quantity.ts';
import type { PinPaths } from './pin-paths.ts';

/** Where a pin that stands still hits. */
export interface PinHits {
  /** m down from the eye's parallel to the arrow. */
  readonly down: number;
  /** The range it is exactly on for, beyond the top of its path; null where the arrow never comes back to the line of sight. */
  readonly range: Metres | null;
  /** The stretch over which the arrow stays in a ring with the pin held on its middle; null where it never does. */
  readonly from: Metres | null;
  readonly to: Metres | null;
}

/** A crossing is found to this, m along the line of sight: a hundredth of a millimetre of height. */
const TOLERANCE = 1e-4;
/** Steps in which the top of a path is looked for, m; between them it is concave. */
const STEP = 0.25;

/**
 * Read the path of a pin, from where free flight begins to the farthest range it was flown to.
 *
 * The stretch is the one around the range it is on for: it begins where the arrow comes up into the ring, or, where the path
 * rises above the ring on the way, where it falls back into it; it ends where the arrow leaves the ring below.
 *
 * @param ring diameter, m
 * @param end farthest range of the paths, m
 */
export function pinHits(paths: PinPaths, down: number, ring: number, end: number): PinHits {
  const { height } = paths.path(down);
  const half = ring / 2;
  const top = topOf(height, paths.start, end);
  const crossing = (level: number, from: number, to: number): Metres | null =>
    (height(from) - level) * (height(to) - level) > 0
      ? null
      : si(bracketedRoot((x) => height(x) - level, from, to, { tolerance: TOLERANCE }));
  const highest = height(top);
  const risen = height(paths.start) >= -half ? si<'m'>(paths.start) : crossing(-half, paths.start, top);
  return {
    down,
    range: crossing(0, top, end),
    from: highest > half ? crossing(half, top, end) : risen,
    to: crossing(-half, top, end),
  };
}

/** The range at which a concave path is highest. */
function topOf(height: (x: number) => number, start: number, end: number): number {
  const slope = (x: number): number => height(x + 1e-3) - height(x - 1e-3);
  if (slope(start + STEP) <= 0) return start;
  if (slope(end - STEP) >= 0) return end;
  return bracketedRoot(slope, start + STEP, end - STEP, { tolerance: TOLERANCE });
}
