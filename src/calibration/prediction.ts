import { STATE } from '../flight/frame.ts';
import { type Flyer, flyer } from '../flight/trajectory.ts';
import { si } from '../quantities/quantity.ts';
import { launchThrough, type PinPosition } from '../sight/geometry.ts';
import type { Rig } from '../sight/rig.ts';
import { travelAt } from '../sight/scale.ts';
import { impact, pinAtZero, pinForHit } from '../sight/zero.ts';
import type { Measurement } from './measurement.ts';
import { TRAVEL_SCALE } from './parameters.ts';

/** Sideways play takes no part in the fit of heights, so the windage is left at nought. */
const WINDAGE = 0;

/**
 * What the rig says each measurement should have been: height of the hit (m) for a mark and for a drop (negative below),
 * speed (m/s) for a chronograph reading.
 */
export function predict(rig: Rig, measurements: readonly Measurement[]): readonly number[] {
  const flight = flyer(rig.conditions);
  const zero = pinAtZero(rig, WINDAGE, flight);
  return measurements.map((measurement) => predictOne(flight, rig, zero, measurement));
}

function predictOne(flight: Flyer, rig: Rig, zero: PinPosition, measurement: Measurement): number {
  switch (measurement.kind) {
    case 'mark': {
      const down = zero.down + travelAt(rig.scale ?? TRAVEL_SCALE, measurement.reading);
      const held = { ...rig, cant: si<'rad'>(rig.cant + measurement.cant) };
      return impact(flight, held, { down, windage: WINDAGE }, measurement.range).height;
    }
    case 'drop': {
      const pin = pinForHit(rig, measurement.aimedWith, WINDAGE, flight);
      return impact(flight, rig, pin, measurement.range).height;
    }
    case 'speed':
      return speedAt(flight, rig, zero, measurement.range);
  }
}

function speedAt(flight: Flyer, rig: Rig, pin: PinPosition, range: number): number {
  const [state = []] = flight.states(launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed), [range]);
  const at = (i: number): number => state[i] ?? Number.NaN;
  return Math.sqrt(at(STATE.vx) ** 2 + at(STATE.vy) ** 2 + at(STATE.vz) ** 2);
}

/** What was measured, in the same terms as `predict`. */
export function observed(measurement: Measurement): number {
  switch (measurement.kind) {
    case 'mark':
      return measurement.vertical;
    case 'drop':
      return -measurement.drop;
    case 'speed':
      return measurement.speed;
  }
}
