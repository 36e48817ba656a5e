import type { FlyerFor } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { once } from '../numerics/once.ts';
import { bracketedRoot } from '../numerics/root.ts';
import { type Metres, type Radians, si } from '../quantities/quantity.ts';
import { launchAngle, launchThrough, type PinPosition } from './geometry.ts';
import type { PinPaths, Shared } from './pin-paths.ts';
import type { Rig } from './rig.ts';
import { readingAt } from './scale.ts';
import { sightIn } from './sighted.ts';

/** Where the pin stands for one range: all that a tape shows. */
export interface Setting {
  readonly range: Metres;
  /** Of the pin, from its place at the zero range; positive down, for longer ranges. */
  readonly travel: Metres;
  /** Whether the arrow is still on its way up there: so near that marks turn back. */
  readonly rising: boolean;
  /** Room between the arrow (or its vanes) and the sight; negative when they touch. */
  readonly clearance: Metres;
}

/** The setting for one range, and what the path it gives is like. */
export interface Mark extends Setting {
  /** Null when the sight has no scale. */
  readonly reading: number | null;
  /** Of the launch direction above the line of sight. */
  readonly launchAngle: Radians;
  /** Where the arrow is off to the side at this range with the windage set at the zero range; right positive. */
  readonly lateral: Metres;
  /** Vertical movement of the hit for one metre more of travel: what a reading error costs. */
  readonly heightPerTravel: number;
  /** Nearer range at which the same setting hits; null for a mark on the rising part of the path. */
  readonly nearCrossing: Metres | null;
  /** Highest point above the line of sight on the way. */
  readonly highest: { readonly range: Metres; readonly height: Metres };
}

/** Marks at the given ranges, and the paths they came from. */
export interface MarkTable {
  readonly marks: readonly Mark[];
  readonly paths: PinPaths;
  readonly shared: Shared;
  /** Pin and windage at the zero range, m. */
  readonly zero: PinPosition;
}

/** A crossing is found to this, m along the line of sight: a hundredth of a millimetre of height. */
const CROSSING_TOLERANCE = 1e-4;

/**
 * Solve the pin for every range (m, any order, each beyond the start of free flight).
 *
 * The windage is set for a hit at the zero range and then left alone, as on a real sight.
 * @throws NumericalError when the arrow cannot reach a range
 */
export function marksFor(rig: Rig, ranges: readonly number[], fly?: FlyerFor): MarkTable {
  const { pins, paths, shared, zero } = sightIn(rig, ranges, fly);
  const risesAt = risingBy(paths);
  return {
    marks: ranges.map((range, i) => {
      const { down } = at(pins, i);
      return markAt(
        rig,
        paths,
        zero,
        settingAt(rig, zero, { range, down, rising: risesAt(down, range) }),
        down,
      );
    }),
    paths,
    shared,
    zero,
  };
}

/** The settings alone, for a quarter of the work. Ranges and errors as for `marksFor`. */
export function settingsFor(rig: Rig, ranges: readonly number[], fly?: FlyerFor): readonly Setting[] {
  const { pins, paths, zero } = sightIn(rig, ranges, fly);
  const risesAt = risingBy(paths);
  return ranges.map((range, i) => {
    const { down } = at(pins, i);
    return settingAt(rig, zero, { range, down, rising: risesAt(down, range) });
  });
}

/** Step of the difference that shows whether the arrow still rises, m. */
const RISE_STEP = 1e-3;

/** Whether the arrow of a pin still rises where it hits. Where it falls at a range, it falls at all that are farther. */
function risingBy({ height }: PinPaths): (down: number, range: number) => boolean {
  let falling = Number.POSITIVE_INFINITY;
  return (down, range) => {
    const rises = range < falling && height(down, range) >= height(down, range - RISE_STEP);
    if (!rises) falling = Math.min(falling, range);
    return rises;
  };
}

const settingAt = (
  rig: Rig,
  zero: PinPosition,
  { range, down, rising }: { readonly range: number; readonly down: number; readonly rising: boolean },
): Setting => ({
  range: si(range),
  travel: si(down - zero.down),
  rising,
  clearance: si(
    rig.geometry.peepHeight -
      down * Math.cos(rig.geometry.lean) * Math.cos(rig.geometry.barAngle) -
      rig.conditions.arrow.fletchRadius -
      rig.housingBelowPin,
  ),
});

/** What the path of a mark is like is read when it is asked for: most marks are only set. */
function markAt(rig: Rig, paths: PinPaths, zero: PinPosition, setting: Setting, pin: number): Mark {
  const { range, rising } = setting;
  const path = once(() => paths.path(pin));
  const top = once(() => {
    const { height } = path();
    return rising ? { range, height: height(range) } : highestPoint(height, paths.start, range);
  });
  return {
    ...setting,
    reading: rig.scale === null ? null : readingAt(rig.scale, setting.travel),
    heightPerTravel: paths.heightPerTravel(pin, range),
    get launchAngle() {
      const at = { down: pin, windage: zero.windage };
      return launchAngle(launchThrough(rig.geometry, at, rig.cant, rig.launchSpeed));
    },
    get lateral() {
      return si<'m'>(path().lateral(range));
    },
    get nearCrossing() {
      return rising ? null : crossingBefore(path().height, paths.start, top().range);
    },
    get highest() {
      return { range: si<'m'>(top().range), height: si<'m'>(top().height) };
    },
  };
}

/** The top of a concave path between two ranges; an end when the path still rises or already falls there. */
function highestPoint(
  height: (x: number) => number,
  start: number,
  end: number,
): { range: number; height: number } {
  const step = (end - start) * 1e-6;
  const slope = (x: number): number => height(x + step) - height(x - step);
  if (slope(end - step) >= 0) return { range: end, height: height(end) };
  if (slope(start + step) <= 0) return { range: start, height: height(start) };
  const range = bracketedRoot(slope, start + step, end - step, { tolerance: CROSSING_TOLERANCE });
  return { range, height: height(range) };
}

const crossingBefore = (height: (x: number) => number, start: number, top: number): Metres | null =>
  height(start) < 0 && height(top) > 0
    ? si(bracketedRoot(height, start, top, { tolerance: CROSSING_TOLERANCE }))
    : null;
