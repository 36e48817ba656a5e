import { referenceArea } from '../arrow/reference-area.ts';
import { reynoldsNumber } from '../atmosphere/reynolds-number.ts';
import { STATE } from '../flight/frame.ts';
import { type Flyer, flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import { launchThrough, type PinPosition } from './geometry.ts';
import { NO_ZERO, noPin } from './no-pin.ts';
import type { Rig } from './rig.ts';
import { readingAt } from './scale.ts';

/** A hit, m: a hundredth of what a tape can show at any range. */
const HIT_TOLERANCE = 1e-7;
/** The windage from which its solution starts, m. */
const STRAIGHT_AHEAD = 0;
/** The corrections shrink at least a hundredfold each time; more than this many means the arrow cannot get there. */
const MAX_CORRECTIONS = 30;
/** A pin farther down than this many times its distance points the bow up by more than 84 degrees: corrections only run away. */
const STEEPEST = 10;

/** Height and lateral position (m) at a range with the pin as given. */
export function impact(
  flight: Flyer,
  rig: Rig,
  pin: PinPosition,
  range: number,
): { height: number; lateral: number } {
  const states = flight.entered(launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed), [range]);
  const { [STATE.height]: height, [STATE.lateral]: lateral } = at(states, 0);
  return { height, lateral };
}

/**
 * The pin that hits the centre at `range`, by corrections. Moving the pin by δ turns the bow by δ/E, in the bow's own
 * directions: with the bow canted by c and the travel leaning by λ, δ of travel and w of windage move the hit
 *
 *   up by (R/E)(δ cos(c + λ) + w sin c),   right by (R/E)(δ sin(c + λ) − w cos c).
 *
 * The correction that would undo a miss is made again and again until a miss was below 1e-7 m, which it undoes as well; with the
 * windage kept, the rise per travel is taken from the correction before (the secant rule).
 *
 * @param windage null to solve it too (a hit in both directions); else kept, and only the height is made right
 * @throws NumericalError 'not-converged', with the reason NO_PIN, when no pin hits, as when the arrow falls short
 */
export function pinForHit(
  rig: Rig,
  range: number,
  windage: number | null,
  flight: Flyer = flyer(rig.conditions),
): PinPosition {
  const { peepToPin, lean } = rig.geometry;
  const perMiss = peepToPin / range;
  const [c, tilt] = [rig.cant, rig.cant + lean];
  let pin: PinPosition = {
    down: perMiss * dropEstimate(rig, range),
    windage: windage === null ? STRAIGHT_AHEAD : windage,
  };
  let perHeight = perMiss / Math.cos(tilt);
  let before: { down: number; height: number } | null = null;
  for (let i = 0; i < MAX_CORRECTIONS && Math.abs(pin.down) < STEEPEST * peepToPin; i += 1) {
    const { height, lateral } = impact(flight, rig, pin, range);
    if (windage === null) {
      const scale = perMiss / Math.cos(lean);
      pin = {
        down: pin.down - scale * (height * Math.cos(c) + lateral * Math.sin(c)),
        windage: pin.windage + scale * (lateral * Math.cos(tilt) - height * Math.sin(tilt)),
      };
      if (Math.abs(height) < HIT_TOLERANCE && Math.abs(lateral) < HIT_TOLERANCE) return pin;
    } else {
      if (before !== null && height !== before.height)
        perHeight = (pin.down - before.down) / (height - before.height);
      before = { down: pin.down, height };
      pin = { down: pin.down - height * perHeight, windage };
      if (Math.abs(height) < HIT_TOLERANCE) return pin;
    }
  }
  throw noPin(
    `no pin position hits at ${range.toPrecision(3)} m; the last was ${pin.down.toPrecision(3)} m down`,
  );
}

/**
 * The pin of the zero range: a hit there on the slope where the sight was zeroed, whatever slope is shot on since.
 *
 * @param windage as for `pinForHit`; null is the windage that the sight was zeroed with
 * @param flight of the rig itself; serves where it is shot on the slope it was zeroed on
 * @throws NumericalError 'not-converged', with the reason NO_ZERO and the zero range, when no pin hits there
 */
export function pinAtZero(rig: Rig, windage: number | null, flight?: Flyer): PinPosition {
  try {
    return pinThatZeroes(rig, windage, flight);
  } catch (error) {
    if (!(error instanceof NumericalError)) throw error;
    const { message } = error;
    throw new NumericalError('not-converged', message, { at: rig.zeroRange, reason: NO_ZERO });
  }
}

function pinThatZeroes(rig: Rig, windage: number | null, flight?: Flyer): PinPosition {
  const kept = windage === null && rig.zeroedWith !== null ? pinAtZero(asZeroed(rig), null).windage : windage;
  return rig.zeroSlope === rig.conditions.slope
    ? pinForHit(rig, rig.zeroRange, kept, flight)
    : pinForHit(whereZeroed(rig), rig.zeroRange, kept);
}

/** The rig with the arrow and the air that its sight was zeroed with; itself where they are its own. */
export function asZeroed(rig: Rig): Rig {
  const { zeroedWith, conditions, geometry } = rig;
  if (zeroedWith === null) return rig;
  const { launchSpeed, freeFlight, arrow, air, freeFall } = zeroedWith;
  const { jump: _its, ...bow } = geometry;
  return {
    ...rig,
    conditions: { ...conditions, arrow, air, freeFall },
    launchSpeed,
    geometry: { ...bow, freeFlight },
    zeroedWith: null,
  };
}

/**
 * A rig that shoots with the sight of another one, as that one zeroed it: the windage stays, and so does the reading of every
 * place of the pin, so that its own zero range may read a hair differently.
 *
 * @param zeroed whose sight it is, with the scale that the rig has but for what this changes
 * @throws NumericalError when an arrow falls short of the zero range
 */
export function withSightOf(zeroed: Rig, rig: Rig): Rig {
  const { conditions, launchSpeed, geometry } = asZeroed(zeroed);
  const { arrow, air, freeFall } = conditions;
  const { freeFlight } = geometry;
  const there: Rig = { ...rig, zeroedWith: { arrow, air, freeFall, launchSpeed, freeFlight } };
  const { scale } = zeroed;
  if (scale === null) return { ...there, scale };
  const lower = pinAtZero(there, null).down - pinAtZero(zeroed, null).down;
  return { ...there, scale: { ...scale, atZero: readingAt(scale, lower) } };
}

/** The rig on the slope it was zeroed on. */
export const whereZeroed = (rig: Rig): Rig => ({
  ...rig,
  conditions: { ...rig.conditions, slope: rig.zeroSlope },
});

/**
 * How far above the arrow's line the eye's line to the pin must rise at a range: the peep height and the fall of a flat path
 * under one drag coefficient,
 *
 *   (g/2) (R/v)² (e^q − 1 − q) / (q²/2),   q = 2kR,  k = ρ S CD/2m
 *
 * so that a first flight misses by less than a hundredth of the fall.
 *
 * @source the flat-fire approximation: McCoy, Modern Exterior Ballistics, chapter 5
 */
function dropEstimate({ geometry, launchSpeed, conditions }: Rig, range: number): number {
  const { arrow, air, freeFall, slope } = conditions;
  const way = Math.max(0, range - geometry.freeFlight);
  const coefficient = arrow.dragScale * arrow.drag.at(reynoldsNumber(air, launchSpeed, arrow.diameter));
  const q = (way * air.density * referenceArea(arrow.diameter) * coefficient) / arrow.mass;
  const slowing = q < NO_SLOWING ? 1 + q / 3 : (Math.expm1(q) - q) / (q ** 2 / 2);
  return geometry.peepHeight + (freeFall / 2) * Math.cos(slope) * (way / launchSpeed) ** 2 * slowing;
}

/** Below this the quotient is lost in rounding, and two terms of its series are right to the twelfth of its square. */
const NO_SLOWING = 1e-4;
