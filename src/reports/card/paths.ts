import { at } from '../../numerics/at.ts';
import { type Metres, si } from '../../quantities/quantity.ts';
import type { OpenSetup } from '../../setup/open.ts';
import { sightIn } from '../../sight/sighted.ts';

/** The arrow's path with the mark of one range set, from the bow to where it hits. */
export interface MarkPath {
  readonly range: Metres;
  readonly points: readonly PathPoint[];
}

interface PathPoint {
  readonly range: Metres;
  /** Above the line of sight. */
  readonly height: Metres;
}

/** Places on each path: on paper they join to a curve. */
const POINTS = 60;

/** The paths of a few ranges, each with its mark set. */
export function markPaths(
  { calibration: { rig } }: OpenSetup,
  ranges: readonly Metres[],
): readonly MarkPath[] {
  const { pins, paths } = sightIn(rig, ranges);
  return ranges.map((range, i) => {
    const path = paths.path(at(pins, i).down);
    const points = Array.from({ length: POINTS }, (_, k): PathPoint => {
      const x = paths.start + ((range - paths.start) * k) / (POINTS - 1);
      return { range: si(x), height: si(path.height(x)) };
    });
    return { range, points };
  });
}
