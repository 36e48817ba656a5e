import { STANDARD_GRAVITY, STATE } from '../flight/frame.ts';
import { type Flyer, flyer } from '../flight/trajectory.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import { launchThrough, type PinPosition } from './geometry.ts';
import type { Rig } from './rig.ts';

/** A hit, m: a hundredth of what a tape can show at any range. */
const HIT = 1e-7;
/** The corrections shrink at least a hundredfold each time; more than this many means the arrow cannot get there. */
const MAX_CORRECTIONS = 30;

/** Height and lateral position (m) at a range with the pin as given. */
export function impact(
  flight: Flyer,
  rig: Rig,
  pin: PinPosition,
  range: number,
): { height: number; lateral: number } {
  const [state] = flight.states(launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed), [range]);
  return { height: state?.[STATE.height] ?? Number.NaN, lateral: state?.[STATE.lateral] ?? Number.NaN };
}

/**
 * The pin that hits the centre at `range`, by corrections: moving the pin by δ turns the bow by δ/E, so a miss of m at a range R
 * is mended by moving the pin m E/R, and after the first correction by what that one was seen to do (the secant rule).
 *
 * @param windage null to solve it too (a hit in both directions); else kept, and only the height is made right
 * @throws NumericalError 'not-converged' when no pin hits, as when the arrow falls short
 */
export function pinForHit(
  rig: Rig,
  range: number,
  windage: number | null,
  flight: Flyer = flyer(rig.conditions),
): PinPosition {
  const perMiss = rig.geometry.peepToPin / range;
  let pin: PinPosition = { down: perMiss * dropEstimate(rig, range), windage: windage ?? 0 };
  let perHeight = perMiss;
  let before: { down: number; height: number } | null = null;
  for (let i = 0; i < MAX_CORRECTIONS; i += 1) {
    const { height, lateral } = impact(flight, rig, pin, range);
    const across = windage === null ? lateral : 0;
    if (Math.abs(height) < HIT && Math.abs(across) < HIT) return pin;
    if (before !== null && height !== before.height)
      perHeight = (pin.down - before.down) / (height - before.height);
    before = { down: pin.down, height };
    pin = { down: pin.down - height * perHeight, windage: pin.windage + across * perMiss };
  }
  throw new NumericalError(
    'not-converged',
    `no pin position hits at ${range} m; the last was ${pin.down} m down`,
  );
}

/** How far above the arrow's line the eye's line to the pin must rise at a range: the peep height and a fall without drag. */
function dropEstimate({ geometry, launchSpeed, conditions }: Rig, range: number): number {
  const time = Math.max(0, range - geometry.freeFlight) / launchSpeed;
  return geometry.peepHeight + (STANDARD_GRAVITY / 2) * Math.cos(conditions.slope) * time ** 2;
}
