import { STATE } from '../flight/frame.ts';
import { type Flyer, flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { si } from '../quantities/quantity.ts';
import { launchThrough, type PinPosition } from '../sight/geometry.ts';
import type { Rig } from '../sight/rig.ts';
import { travelAt } from '../sight/scale.ts';
import { impact, pinAtZero, pinForHit } from '../sight/zero.ts';
import type { DayPriors, Measurement } from './measurement.ts';
import { TRAVEL_SCALE } from './parameters.ts';

/** Sideways play takes no part in the fit of heights, so the windage is left at nought. */
const WINDAGE = 0;

/** A flight's rig and its arrow in the air, made ready once for all measurements. */
interface Flown {
  readonly rig: Rig;
  readonly flight: Flyer;
}

const flown = (rig: Rig): Flown => ({ rig, flight: flyer(rig.conditions) });

/**
 * What the rig says each measurement should have been: height of the hit (m) for a mark and for a drop (negative below),
 * speed (m/s) for a chronograph reading.
 */
export function predict(rig: Rig, measurements: readonly Measurement[]): readonly number[] {
  const own = flown(rig);
  const zero = pinAtZero(rig, WINDAGE, own.flight);
  return measurements.map((measurement) => predictOne(own, pinFor(own, zero, measurement), measurement));
}

/**
 * By how much one standard deviation of each thing that a day changes moves what is measured on it: the sight stands where the
 * usual day's rig says, and the arrow flies as on the day.
 *
 * @returns a row for each measurement, in its own unit: of the speed, the air's density, and a tail wind
 */
export function dayShifts(
  rig: Rig,
  measurements: readonly Measurement[],
  { speed, density, headWind }: DayPriors,
): readonly (readonly number[])[] {
  if (measurements.length === 0) return [];
  const usual = flown(rig);
  const zero = pinAtZero(rig, WINDAGE, usual.flight);
  const pins = measurements.map((measurement) => pinFor(usual, zero, measurement));
  const { conditions } = rig;
  const { air, wind } = conditions;
  const days = [
    flown({ ...rig, launchSpeed: si(rig.launchSpeed + speed) }),
    flown({
      ...rig,
      conditions: { ...conditions, air: { ...air, density: si(air.density * (1 + density)) } },
    }),
    flown({ ...rig, conditions: { ...conditions, wind: { ...wind, tail: si(wind.tail + headWind) } } }),
  ];
  return measurements.map((measurement, i) => {
    const pin = at(pins, i);
    const before = predictOne(usual, pin, measurement);
    return days.map((day) => predictOne(day, pin, measurement) - before);
  });
}

/** Where the pin stood for a measurement: by its reading, for the range aimed with, or at the zero. */
function pinFor({ flight, rig }: Flown, zero: PinPosition, measurement: Measurement): PinPosition {
  switch (measurement.kind) {
    case 'mark':
      return {
        down: zero.down + travelAt(rig.scale ?? TRAVEL_SCALE, measurement.reading),
        windage: WINDAGE,
      };
    case 'drop':
      return pinForHit(rig, measurement.aimedWith, WINDAGE, flight);
    case 'speed':
      return zero;
  }
}

function predictOne({ flight, rig }: Flown, pin: PinPosition, measurement: Measurement): number {
  switch (measurement.kind) {
    case 'mark': {
      const held = { ...rig, cant: si<'rad'>(rig.cant + measurement.cant) };
      return impact(flight, held, pin, measurement.range).height;
    }
    case 'drop':
      return impact(flight, rig, pin, measurement.range).height;
    case 'speed':
      return speedAt(flight, rig, pin, measurement.range);
  }
}

function speedAt(flight: Flyer, rig: Rig, pin: PinPosition, range: number): number {
  const state = at(flight.states(launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed), [range]), 0);
  return Math.hypot(at(state, STATE.vx), at(state, STATE.vy), at(state, STATE.vz));
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
