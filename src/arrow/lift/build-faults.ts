import { DomainError } from '../../quantities/domain-error.ts';
import { type Metres, type Radians, si } from '../../quantities/quantity.ts';
import type { Arrow } from '../arrow.ts';
import type { Attitude, FlyingArrow } from '../flying-arrow.ts';
import type { ArrowParts } from '../parts/parts.ts';
import { arrowLength, nockLength, type Piece } from '../parts/pieces.ts';
import type { Asymmetry } from './asymmetry.ts';
import { spinOf } from './attitude.ts';
import type { FinRing } from './fin-ring.ts';
import type { LiftingSurfaces } from './lifting.ts';
import { NOSE_SLOPE } from './normal-force.ts';

/**
 * What keeps an arrow from being alike all round; each with where round the shaft it lies, clockwise from the mark, seen
 * from behind.
 */
export interface BuildFaults {
  /** Sag of the shaft's middle off the line through its ends; a dial on a turning shaft reads twice this. */
  readonly bend: { readonly sag: Metres; readonly at: Radians };
  /** Lean of the point from the front of the shaft. */
  readonly head: { readonly tilt: Radians; readonly at: Radians };
  /** One vane set at more than the angle of the others; `at` is where that vane stands. */
  readonly vane: { readonly error: Radians; readonly at: Radians };
}

/** What of an arrow its faults act on. */
type FaultyArrow = Pick<Arrow, 'parts' | 'surfaces' | 'pieces'> & {
  readonly flying: Pick<FlyingArrow, 'balance' | 'attitude'>;
};

/** The arrow's line in the plane of one fault: height and slope of its middle at a place from the groove. */
interface Line {
  readonly height: (place: number) => number;
  readonly slope: (place: number) => number;
}

/**
 * The force, the moment and the spin that faults of the build give an arrow flying straight, to first order.
 *
 * Every part meets the air at the slope of the arrow's line where it stands, less the lean of the line about which the mass
 * turns freely (the mass-weighted straight line through it). A bent shaft also lifts all along by the law that makes the
 * nose lift, 2 S d(slope) from front to rear, which takes back what a leaning bare point gives.
 *
 * A vane set off by an angle pushes square to itself, clockwise for more helical to the right, and adds its share to the spin.
 *
 * @throws DomainError when the arrow's parts are not known, or for a vane's error on an arrow without vanes
 * @source slender-body theory (Munk); fins as in Barrowman, 1967
 */
export function asymmetryOf(
  { flying, parts, surfaces, pieces }: FaultyArrow,
  faults: BuildFaults,
): Asymmetry {
  if (parts === null || surfaces === null)
    throw new DomainError('faults of the build', Number.NaN, 'an arrow with `arrow.parts` in the setup file');
  const bend = trim(bentLine(parts, faults.bend.sag), parts, surfaces, pieces, flying.balance);
  const head = trim(leaningHead(parts, faults.head.tilt), parts, surfaces, pieces, flying.balance);
  const vane = vaneTrim(surfaces, faults.vane.error, flying.balance);
  // A vane at the mark pushes a quarter turn clockwise from it.
  const turned = faults.vane.at + Math.PI / 2;
  const sum = (component: 0 | 1, part: (angle: number) => number): number =>
    bend[component] * part(faults.bend.at) +
    head[component] * part(faults.head.at) +
    vane[component] * part(turned);
  return {
    force: [sum(0, Math.cos), sum(0, Math.sin)],
    firstMoment: [sum(1, Math.cos), sum(1, Math.sin)],
    spinPerMetre: si(vaneSpin(surfaces, flying.attitude, faults.vane.error)),
  };
}

/** A parabola over the shaft, straight on beyond its ends. */
function bentLine(parts: ArrowParts, sag: number): Line {
  const rear = nockLength(parts.nock);
  const [middle, half] = [rear + parts.shaft.length / 2, parts.shaft.length / 2];
  const within = (place: number): number => Math.min(1, Math.max(-1, (place - middle) / half));
  const slope = (place: number): number => (-2 * sag * within(place)) / half;
  const height = (place: number): number => {
    const nearest = within(place);
    return sag * (1 - nearest * nearest) + slope(place) * (place - middle - nearest * half);
  };
  return { height, slope };
}

function leaningHead(parts: ArrowParts, tilt: number): Line {
  const front = arrowLength(parts);
  return {
    height: (place) => tilt * Math.max(0, place - front),
    slope: (place) => (place > front ? tilt : 0),
  };
}

/** Sums of slope x tilt, and of slope x tilt x place from the balance point. */
function trim(
  { height, slope }: Line,
  parts: ArrowParts,
  { nose, vanes, blades }: LiftingSurfaces,
  pieces: readonly Piece[],
  balance: number,
): readonly [number, number] {
  const lean = massLean(height, pieces);
  const [rear, front] = [nockLength(parts.nock), arrowLength(parts)];
  const atFront = slope(front);
  const forces: readonly (readonly [force: number, place: number])[] = [
    [nose.slope * (slope(nose.place) - lean), nose.place],
    [NOSE_SLOPE * (atFront - slope(nose.place)), front],
    [NOSE_SLOPE * (slope(rear) - atFront), (rear + front) / 2],
    ...[vanes, blades]
      .filter((ring) => ring !== null)
      .map(({ ringSlope, place }) => [ringSlope * (slope(place) - lean), place] as const),
  ];
  return forces.reduce<readonly [number, number]>(
    ([total, first], [force, place]) => [total + force, first + force * (place - balance)],
    [0, 0],
  );
}

/** Slope of the straight line that fits the arrow's line best, by mass: the axis about which it turns freely. */
function massLean(height: (place: number) => number, pieces: readonly Piece[]): number {
  const points = pieces.flatMap(({ mass, place, length }) =>
    GAUSS_RULE.map(([at, weight]) => {
      const x = place + (at * length) / 2;
      return { mass: weight * mass, x, y: height(x) };
    }),
  );
  const total = (of: (point: { mass: number; x: number; y: number }) => number): number =>
    points.reduce((sum, point) => sum + of(point), 0);
  const mass = total((point) => point.mass);
  const x = total((point) => point.mass * point.x) / mass;
  return (
    total((point) => point.mass * (point.x - x) * point.y) / total((point) => point.mass * (point.x - x) ** 2)
  );
}

/** Places on -1 to 1 and weights that sum to 1: exact to the fifth degree, where a parabola's moment needs the third. */
const GAUSS_RULE = [
  [-Math.sqrt(0.6), 5 / 18],
  [0, 8 / 18],
  [Math.sqrt(0.6), 5 / 18],
] as const;

/** One vane's share of the ring's slope is 2/N of it: half of all N vanes meet an incidence on average. */
function vaneTrim(surfaces: LiftingSurfaces, error: number, balance: number): readonly [number, number] {
  if (error === 0) return [0, 0];
  const { ringSlope, count, place } = requireVanes(surfaces);
  const force = (2 / count) * ringSlope * error;
  return [force, force * (place - balance)];
}

/** In the proportion in which the vanes' common angle spins this arrow; by the same law when they have none. */
function vaneSpin(surfaces: LiftingSurfaces, attitude: Attitude | null, error: number): number {
  if (error === 0 || attitude === null) return 0;
  const { count, angle } = requireVanes(surfaces);
  const mean = error / count;
  return angle === 0
    ? spinOf(attitude.axialInertia, surfaces, true, mean).spinPerMetre
    : (attitude.spinPerMetre / angle) * mean;
}

function requireVanes({ vanes }: LiftingSurfaces): FinRing {
  if (vanes === null) throw new DomainError('error of one vane', Number.NaN, 'an arrow with vanes');
  return vanes;
}
