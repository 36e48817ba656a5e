import { type Flyer, type FlyerFor, flyer } from '../flight/trajectory.ts';
import { oncePer } from '../numerics/once.ts';
import type { PinPosition } from './geometry.ts';
import { type PinPaths, pinPaths, type Shared } from './pin-paths.ts';
import type { Rig } from './rig.ts';
import { pinAtZero } from './zero.ts';

/** A bow sighted in: windage and height at the zero range, then the mark of each range with the windage left alone. */
export interface Sighted {
  readonly rig: Rig;
  readonly flight: Flyer;
  readonly zero: PinPosition;
  /** In the order of the ranges. */
  readonly pins: readonly PinPosition[];
  /** The paths of every pin between the highest and the lowest of these. */
  readonly paths: PinPaths;
  readonly shared: Shared;
}

/** The zero of a rig, found once: a report sights the same bow in for several tables. */
const zeroed = oncePer((rig: Rig) => zeroedBy(flyer, rig));

function zeroedBy(fly: FlyerFor, rig: Rig): Pick<Sighted, 'flight' | 'zero'> {
  const flight = fly(rig.conditions);
  return { flight, zero: pinAtZero(rig, null, flight) };
}

/**
 * Sight the rig in, as an archer would: hit in both directions at the zero range, on the slope it was zeroed on, then right in
 * height at each of `ranges` (m).
 *
 * @param fly the flights; for marks that are told in numbers those of `flyer`
 * @throws NumericalError when the arrow falls short of a range, DomainError for a range inside the bow
 */
export function sightIn(rig: Rig, ranges: readonly number[], fly: FlyerFor = flyer): Sighted {
  const { flight, zero } = fly === flyer ? zeroed(rig) : zeroedBy(fly, rig);
  const { pins, paths, shared } = pinPaths(rig, zero, ranges, flight);
  return { rig, flight, zero, pins: pins.map((down) => ({ down, windage: zero.windage })), paths, shared };
}
