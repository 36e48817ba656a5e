import { blendedPath, flyPath, type Path } from '../flight/path.ts';
import { equalFlyer, type Flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { barycentricWeights, chebyshevNodes, interpolateAt } from '../numerics/chebyshev.ts';
import { NumericalError, unlessNumericalError } from '../numerics/numerical-error.ts';
import { oncePerNumber } from '../numerics/once.ts';
import { DomainError } from '../quantities/domain-error.ts';
import { launchThrough, type PinPosition } from './geometry.ts';
import { noPin } from './no-pin.ts';
import type { Rig } from './rig.ts';
import { impact, pinForHit } from './zero.ts';

/**
 * Flights shared by all marks. Paths for different pins differ so smoothly that five of them, at Chebyshev places over the pins
 * asked for, give every other by interpolation; a test holds the error below 1e-7 m.
 */
const SHARED_FLIGHTS = 5;
/** Pins are spread wider than the first estimate of what is needed: by this share of the spread, and by at least this, m. */
const SPAN_WIDENING = { share: 0.02, least: 2e-4 };
/** Widenings before giving up; one is enough for every bow that reaches its ranges. */
const MAX_SPREADS = 8;
/** Change of the pin, m, at which a mark is found: on a target at 100 m it moves the hit by 1e-8 m. */
const PIN_TOLERANCE = 1e-10;
const MAX_SECANT_STEPS = 50;

/** The paths of one rig for every pin between the highest and the lowest needed, at fixed windage. */
export interface PinPaths {
  /** The whole path with the pin `down` (m); for reading one pin at many ranges. */
  readonly path: (down: number) => Path;
  /** Height above the line of sight at `range` with the pin `down` (m). */
  readonly height: (down: number, range: number) => number;
  readonly lateral: (down: number, range: number) => number;
  /** Vertical movement of the hit for one metre more of travel. */
  readonly heightPerTravel: (down: number, range: number) => number;
  /** From where on the paths can be read, m ahead of the eye: free flight has begun with every pin. */
  readonly start: number;
}

/** What shared paths are flown over. */
export interface Shared {
  /** Of the pins, m down. */
  readonly span: { readonly lo: number; readonly hi: number };
  readonly windage: number;
  /** The farthest range, m. */
  readonly end: number;
}

/** The pins in the order of their ranges, m down, and the paths they were read from. */
export interface SolvedPins {
  readonly pins: readonly number[];
  readonly paths: PinPaths;
  readonly shared: Shared;
}

/** Step of the difference that shows how a hit moves with the pin, m: exact to 1e-9, as height is nearly straight in it. */
const PIN_STEP = 1e-5;

/**
 * Solve the pin for every one of `ranges` (m) on shared flights, for a rig whose pin hits at its zero range.
 *
 * @throws DomainError when a range lies before the start of free flight; NumericalError when the arrow falls short
 */
export function pinPaths(rig: Rig, zero: PinPosition, ranges: readonly number[], flight: Flyer): SolvedPins {
  const end = Math.max(rig.zeroRange, ...ranges);
  const atZero = flyPath(flight, launchThrough(rig.geometry, zero, rig.cant, rig.launchSpeed), end);
  const nearest = Math.min(...ranges);
  if (!(nearest > atZero.start))
    throw new DomainError(
      'range',
      nearest,
      `beyond ${atZero.start} m, where the arrow leaves the bow`,
      atZero.start,
    );

  const { peepToPin } = rig.geometry;
  const straight = ranges.map((range) => zero.down - (atZero.height(range) * peepToPin) / range);
  const asked = { rig, ranges, windage: zero.windage, end, flight };
  try {
    return solvedFrom(straight, asked);
  } catch (error) {
    if (!(error instanceof NumericalError)) throw error;
    const found = unlessNumericalError(() => solvedFrom(betweenEnds(straight, asked), asked));
    // Where these fail as well, the first error says more.
    if (found === null) throw error;
    return found;
  }
}

interface PinsAsked extends Pick<Shared, 'windage' | 'end'> {
  readonly rig: Rig;
  readonly ranges: readonly number[];
  readonly flight: Flyer;
}

/**
 * Estimates that are right at both ends. Near the farthest range that any pin hits, how the zero's own path falls says little
 * about how much higher the bow must point, and a pin estimated from it may throw the arrow nowhere.
 */
function betweenEnds(
  estimates: readonly number[],
  { rig, ranges, windage, flight }: PinsAsked,
): readonly number[] {
  const exact = (range: number): number => pinForHit(rig, range, windage, flight).down;
  const [near, far] = [exact(Math.min(...ranges)), exact(Math.max(...ranges))];
  const [least, most] = [Math.min(...estimates), Math.max(...estimates)];
  const share = (estimate: number): number => (most > least ? (estimate - least) / (most - least) : 1);
  return estimates.map((estimate) => near + (far - near) * share(estimate));
}

/** Pins this far down for their distance from the peep point the bow so high that its reach is near. */
const STEEP = 0.35; // 19 degrees
/** What may be left of a hit with so high a pin, m: shared paths are straight to less there. */
const HIT_WHEN_STEEP = 0.01;

/** The pins, when the lowest of them hits in a flight of its own; asked only of one that points the bow high. */
function flownThere(solved: SolvedPins, { rig, ranges, windage, flight }: PinsAsked): SolvedPins {
  const down = Math.max(...solved.pins);
  if (down < STEEP * rig.geometry.peepToPin) return solved;
  const range = at(ranges, solved.pins.indexOf(down));
  if (Math.abs(impact(flight, rig, { down, windage }, range).height) < HIT_WHEN_STEEP) return solved;
  throw noPin(`no pin position hits at ${range.toPrecision(3)} m`);
}

/** @throws NumericalError when some range has no pin near its estimate */
function solvedFrom(estimates: readonly number[], asked: PinsAsked): SolvedPins {
  const { rig, ranges, windage, end, flight } = asked;
  const { peepToPin } = rig.geometry;
  let span = spread(estimates);
  for (let attempt = 0; attempt < MAX_SPREADS; attempt += 1) {
    const { lo, hi } = span;
    const shared = { span, windage, end };
    const { paths, hit } = between(rig, shared, SHARED_FLIGHTS, flight);
    const pins = ranges.map((range, i) => hit(range, estimates[i] ?? lo, peepToPin / range));
    if (Math.min(...pins) >= lo && Math.max(...pins) <= hi) return flownThere({ pins, paths, shared }, asked);
    span = spread([lo, hi, ...pins]);
  }
  throw noPin(
    `no pin found for every range between ${Math.min(...ranges).toPrecision(3)} and ${end.toPrecision(3)} m`,
  );
}

/**
 * The paths of a rig over pins and ranges that another one was solved for, on `flights` shared flights: for seeing how
 * heights change when the rig does. Three in equal steps are enough for a difference of two such, whose own errors cancel.
 */
export const pathsOver = (rig: Rig, shared: Shared, flights: number): PinPaths =>
  between(rig, shared, flights, equalFlyer(rig.conditions)).paths;

function spread(pins: readonly number[]): Shared['span'] {
  const [lo, hi] = [Math.min(...pins), Math.max(...pins)];
  const more = SPAN_WIDENING.share * (hi - lo) + SPAN_WIDENING.least;
  return { lo: lo - more, hi: hi + more };
}

interface SharedPaths {
  readonly paths: PinPaths;
  /** The pin that hits at a range, from an estimate and how far the pin must go for one metre of height. */
  readonly hit: (range: number, estimate: number, perHeight: number) => number;
}

function between(rig: Rig, { span, windage, end }: Shared, flights: number, flight: Flyer): SharedPaths {
  const nodes = chebyshevNodes(flights, span.lo, span.hi);
  const weights = barycentricWeights(flights);
  const launches = nodes.map((down) =>
    launchThrough(rig.geometry, { down, windage }, rig.cant, rig.launchSpeed),
  );
  const start = Math.max(...launches.map(({ position }) => position[0]));
  const flown = launches.map((launch) => flyPath(flight, launch, end, start));
  const at = (values: readonly number[], down: number): number => interpolateAt(nodes, weights, values, down);
  const heights = oncePerNumber((range): readonly number[] => flown.map((path) => path.height(range)));
  const path = (down: number): Path =>
    blendedPath(
      flown,
      nodes.map((_, j) =>
        at(
          nodes.map((__, k) => (j === k ? 1 : 0)),
          down,
        ),
      ),
    );
  return {
    paths: {
      path,
      height: (down, range) => at(heights(range), down),
      lateral: (down, range) =>
        at(
          flown.map((one) => one.lateral(range)),
          down,
        ),
      heightPerTravel: (down, range) => {
        const values = heights(range);
        return (at(values, down + PIN_STEP) - at(values, down - PIN_STEP)) / (2 * PIN_STEP);
      },
      start,
    },
    hit: (range, estimate, perHeight) => {
      const values = heights(range);
      return secantRoot((down) => at(values, down), estimate, perHeight);
    },
  };
}

/** Where `height` is 0, by the secant rule; the first step takes it to fall by one for every `perHeight` of the variable. */
function secantRoot(height: (down: number) => number, estimate: number, perHeight: number): number {
  let before = estimate;
  let missBefore = height(before);
  let pin = before - missBefore * perHeight;
  for (let i = 0; i < MAX_SECANT_STEPS; i += 1) {
    if (Math.abs(pin - before) < PIN_TOLERANCE) return pin;
    const miss = height(pin);
    const step = miss === missBefore ? 0 : (miss * (pin - before)) / (miss - missBefore);
    [before, missBefore, pin] = [pin, miss, pin - step];
  }
  throw noPin(
    Number.isFinite(pin) ? `no pin hits; the last tried was ${pin.toPrecision(3)} m down` : 'no pin hits',
  );
}
