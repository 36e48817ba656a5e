import { STATE } from '../flight/frame.ts';
import { equalFlyer, type Flyer, flyer } from '../flight/trajectory.ts';
import { at } from '../numerics/at.ts';
import { oncePer } from '../numerics/once.ts';
import { si } from '../quantities/quantity.ts';
import { launchThrough, type PinPosition } from '../sight/geometry.ts';
import type { Rig } from '../sight/rig.ts';
import { impact, pinAtZero, pinForHit } from '../sight/zero.ts';
import { type DaySetting, onDay } from './day-setting.ts';
import type { DayPriors, Measurement } from './measurement.ts';
import { type Beside, besideOf, TRAVEL_SCALE } from './parameters.ts';
import { travelOf } from './sight-mark.ts';

/** Sideways play takes no part in the fit of heights, so the windage is left at nought. */
export const WINDAGE = 0;

/** A flight's rig and its arrow in the air, made ready once for all measurements. */
export interface Flown {
  readonly rig: Rig;
  readonly flight: Flyer;
}

const flown = (rig: Rig): Flown => ({ rig, flight: flyer(rig.conditions) });
/** The same for what a small change does. */
export const flownAlike = (rig: Rig): Flown => ({ rig, flight: equalFlyer(rig.conditions) });

/** The rig in the setting of each day, each made ready once; the sight's own pins come from the rig itself. */
export function daily(
  own: Flown,
  perDegree: number,
  ready: (rig: Rig) => Flown = flown,
): (setting: DaySetting | undefined) => Flown {
  const on = oncePer((setting: DaySetting) => ready(onDay(own.rig, setting, perDegree)));
  return (setting) => (setting === undefined ? own : on(setting));
}

/**
 * What the rig says each measurement should have been: height of the hit (m) for a mark and for a drop (negative below),
 * speed (m/s) for a chronograph reading. Each is flown in its own setting, with the sight as the rig itself was zeroed.
 */
export const predict = (
  rig: Rig,
  measurements: readonly Measurement[],
  beside: Beside = besideOf({}),
): readonly number[] => measurements.map(predictor(rig, beside));

/** The same for one measurement after another, with the rig zeroed once. */
export function predictor(rig: Rig, beside: Beside): (measurement: Measurement) => number {
  const own = flown(rig);
  const zero = pinAtZero(rig, WINDAGE, own.flight);
  const on = daily(own, beside.perDegree);
  return (measurement) =>
    predictOne(on(measurement.setting), pinFor(own, zero, measurement, beside), measurement);
}

/**
 * By how much one standard deviation of each thing that a day changes moves what is measured on it: the sight stands where the
 * usual day's rig says, and the arrow flies as on the day. Another arrow's speed and drag are less sure than those of the
 * rig's own, and that is the day's too.
 *
 * @returns a row for each measurement, in its own unit: of the speed, the air's density, and a tail wind
 */
export function dayShifts(
  rig: Rig,
  measurements: readonly Measurement[],
  days: DayPriors,
  beside: Beside = besideOf({}),
): readonly (readonly number[])[] {
  if (measurements.length === 0) return [];
  const usual = flownAlike(rig);
  const zero = pinAtZero(rig, WINDAGE, usual.flight);
  const on = daily(usual, beside.perDegree, flownAlike);
  const shifted = new Map<Flown, readonly Flown[]>();
  return measurements.map((measurement) => {
    const pin = pinFor(usual, zero, measurement, beside);
    const day = on(measurement.setting);
    const others = shifted.get(day) ?? shiftedDays(day.rig, days, measurement.setting);
    shifted.set(day, others);
    const before = predictOne(day, pin, measurement);
    return others.map((other) => predictOne(other, pin, measurement) - before);
  });
}

/** A usual size of what may have changed on a bow between two days. */
interface BowChanges {
  /** Of the launch speed, m/s. */
  readonly speed: number;
  /** Of the peep or the pin, square to the arrow, m. */
  readonly sight: number;
  /** Of the drag, relative. */
  readonly drag: number;
}

/**
 * By how much a change of the bow since it was zeroed moves every measurement: a faster launch, a peep that has slipped up
 * (or, to a hair, a pin that has gone down), and more drag. The pin stands where it stood on the bow.
 *
 * @returns a row for each measurement, in its own unit
 */
export function changeShifts(
  rig: Rig,
  measurements: readonly Measurement[],
  { speed, sight, drag }: BowChanges,
  beside: Beside,
): readonly (readonly number[])[] {
  const usual = flown(rig);
  const zero = pinAtZero(rig, WINDAGE, usual.flight);
  const on = daily(usual, beside.perDegree);
  return measurements.map((measurement) => {
    const pin = pinFor(usual, zero, measurement, beside);
    const day = on(measurement.setting);
    const before = predictOne(day, pin, measurement);
    const { geometry, conditions, launchSpeed } = day.rig;
    const slipped = { ...geometry, peepHeight: si<'m'>(geometry.peepHeight + sight) };
    const { arrow } = conditions;
    const dragged = { ...conditions, arrow: { ...arrow, dragScale: arrow.dragScale * (1 + drag) } };
    return [
      predictOne({ ...day, rig: { ...day.rig, launchSpeed: si(launchSpeed + speed) } }, pin, measurement),
      predictOne(
        { ...day, rig: { ...day.rig, geometry: slipped } },
        { ...pin, down: pin.down + sight },
        measurement,
      ),
      predictOne(flown({ ...day.rig, conditions: dragged }), pin, measurement),
    ].map((after) => after - before);
  });
}

/** The rig one standard deviation faster, in denser air, and with the wind more from behind. */
function shiftedDays(
  rig: Rig,
  { speed, density, headWind }: DayPriors,
  setting: DaySetting | undefined,
): readonly Flown[] {
  const { conditions } = rig;
  const { air, wind } = conditions;
  const arrow = setting === undefined ? null : setting.arrow;
  const faster = arrow === null ? speed : Math.hypot(speed, arrow.speedRatioSd * rig.launchSpeed);
  // What an arrow's drag is more, and what the air is denser, are one to the flight.
  const denser = arrow === null ? density : Math.hypot(density, arrow.dragSd);
  return [
    flownAlike({ ...rig, launchSpeed: si(rig.launchSpeed + faster) }),
    flownAlike({
      ...rig,
      conditions: { ...conditions, air: { ...air, density: si(air.density * (1 + denser)) } },
    }),
    flownAlike({ ...rig, conditions: { ...conditions, wind: { ...wind, tail: si(wind.tail + headWind) } } }),
  ];
}

/** Where the pin stood for a measurement: by its reading or its pencil line, for the range aimed with, or at the zero. */
export function pinFor(
  { flight, rig }: Flown,
  zero: PinPosition,
  measurement: Measurement,
  { tapeRatio }: Beside,
): PinPosition {
  const scale = rig.scale ?? TRAVEL_SCALE;
  switch (measurement.kind) {
    case 'mark':
    case 'pencil':
      return { down: zero.down + travelOf(scale, measurement, tapeRatio), windage: WINDAGE };
    case 'drop':
      return pinForHit(rig, measurement.aimedWith, WINDAGE, flight);
    case 'speed':
      return zero;
  }
}

export function predictOne({ flight, rig }: Flown, pin: PinPosition, measurement: Measurement): number {
  switch (measurement.kind) {
    case 'mark':
    case 'pencil': {
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
  if (range <= rig.geometry.freeFlight) return rig.launchSpeed;
  const state = at(flight.states(launchThrough(rig.geometry, pin, rig.cant, rig.launchSpeed), [range]), 0);
  return Math.hypot(at(state, STATE.vx), at(state, STATE.vy), at(state, STATE.vz));
}

/** What was measured, in the same terms as `predict`. */
export function observed(measurement: Measurement): number {
  switch (measurement.kind) {
    case 'mark':
    case 'pencil':
      return measurement.vertical;
    case 'drop':
      return -measurement.drop;
    case 'speed':
      return measurement.speed;
  }
}
