import { STATE } from '../flight/frame.ts';
import { type Flyer, flyer } from '../flight/trajectory.ts';
import { NumericalError } from '../numerics/numerical-error.ts';
import { launchThrough, type PinPosition } from './geometry.ts';
import type { Rig } from './rig.ts';

/** A hit, m: a hundredth of what a tape can show at any range. */
const HIT = 1e-7;
/** The corrections shrink a thousandfold each time; more than this many means the arrow cannot get there. */
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
 * The pin that hits the centre at `range`. Moving the pin by δ turns the bow by δ/E, so a miss of m at a range R is mended
 * by moving the pin m E/R; repeated until the miss is below 1e-7 m.
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
  const { peepToPin, peepHeight } = rig.geometry;
  let pin: PinPosition = { down: (peepHeight * peepToPin) / range, windage: windage ?? 0 };
  for (let i = 0; i < MAX_CORRECTIONS; i += 1) {
    const { height, lateral } = impact(flight, rig, pin, range);
    const across = windage === null ? lateral : 0;
    if (Math.abs(height) < HIT && Math.abs(across) < HIT) return pin;
    const perMiss = peepToPin / range;
    pin = { down: pin.down - height * perMiss, windage: pin.windage + across * perMiss };
  }
  throw new NumericalError(
    'not-converged',
    `no pin position hits at ${range} m; the last was ${pin.down} m down`,
  );
}
