import type { Launch } from '../../flight/launch.ts';
import { flyPath, type Path } from '../../flight/path.ts';
import type { Flyer } from '../../flight/trajectory.ts';
import { unlessNumericalError } from '../../numerics/numerical-error.ts';
import { bracketedRoot, minimumOf } from '../../numerics/root.ts';
import { launchThrough, type PinPosition } from '../../sight/geometry.ts';
import type { Rig } from '../../sight/rig.ts';
import { pinForHit } from '../../sight/zero.ts';

/** A range is found to this, m: on the target it is below a millionth of a metre. */
const FOUND = 1e-5;
/** The top of a path is flat: this finds it well enough to tell on which side of the line of sight it lies. */
const TOP_FOUND = 1e-3;
/** A path this much longer is flown when the arrow is still above the line of sight at the end of the last. */
const FURTHER = 1.5;
const LEAST_FURTHER = 1.001;

/**
 * The range whose mark is this pin: where the falling part of the path crosses the line of sight, m.
 *
 * @param guess about where, m; only time is lost by a bad one
 * @returns null for a pin above every mark: its path stays below the line of sight
 */
export function rangeOfPin(rig: Rig, flight: Flyer, pin: PinPosition, guess: number): number | null {
  const launch = launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed);
  const path = pathDown(flight, launch, guess);
  const top = minimumOf((x) => -path.height(x), path.start, path.end, { tolerance: TOP_FOUND });
  return path.height(top) > 0 ? bracketedRoot(path.height, top, path.end, { tolerance: FOUND }) : null;
}

/**
 * A path that ends below the line of sight: not much farther than it need be, as an arrow of much drag comes down all but
 * upright.
 *
 * @throws NumericalError when it comes down so steeply that none is found
 */
function pathDown(flight: Flyer, launch: Launch, guess: number): Path {
  let end = guess;
  for (let further = FURTHER; further > LEAST_FURTHER; ) {
    const path = unlessNumericalError(() => flyPath(flight, launch, end * further));
    if (path === null) further = Math.sqrt(further);
    else if (path.height(path.end) < 0) return path;
    else end = path.end;
  }
  return flyPath(flight, launch, end * FURTHER);
}

/** The range of the highest mark is found to this, m: marks hardly change about it. */
const HIGHEST_FOUND = 1e-2;
/** Without drag the highest mark is for the range where the arrow has fallen by the peep height; drag moves it by far less. */
const ABOUT_HIGHEST = 3;

/**
 * The highest pin that hits anywhere on the slope of the rig, m down: for nearer ranges marks turn back. Its path touches the
 * line of sight from below, at √(2 v² h / g) without drag, h the peep height.
 *
 * @throws NumericalError when no pin hits about there
 */
export function highestPin(rig: Rig, windage: number, flight: Flyer): number {
  const { geometry, launchSpeed, conditions } = rig;
  const fall = conditions.freeFall * Math.cos(conditions.slope);
  const touches = launchSpeed * Math.sqrt((2 * geometry.peepHeight) / fall);
  const down = (range: number): number => pinForHit(rig, range, windage, flight).down;
  const nearest = geometry.freeFlight + touches / (2 * ABOUT_HIGHEST);
  return down(minimumOf(down, nearest, nearest + ABOUT_HIGHEST * touches, { tolerance: HIGHEST_FOUND }));
}
