import type { Arrow } from '../../arrow/arrow.ts';
import { asymmetryOf } from '../../arrow/lift/build-faults.ts';
import { withMass } from '../../arrow/varied-arrow.ts';
import { calm } from '../../atmosphere/wind.ts';
import { CLEAN, rigidLaunch } from '../../flight/rigid-launch.ts';
import { flyRigid } from '../../flight/rigid-trajectory.ts';
import { flyer } from '../../flight/trajectory.ts';
import { at } from '../../numerics/at.ts';
import { GRAIN } from '../../quantities/exact.ts';
import { type Kilograms, type Metres, si } from '../../quantities/quantity.ts';
import type { Rig } from '../../sight/rig.ts';
import { straightLaunch } from '../../sight/shot.ts';
import { impact, pinForHit } from '../../sight/zero.ts';

/** Half the step of mass of the difference, kg. */
const MASS_STEP = 5 * GRAIN;
const NO_WINDAGE = 0;

/**
 * Change of the height of a hit for a kilogram more of arrow, m/kg, below 0: a heavier arrow leaves slower, by the energy
 * that arrow
 * and virtual mass share.
 *
 *   v'/v = sqrt((m + K)/(m' + K))
 */
export function heightPerMass(rig: Rig, virtualMass: Kilograms, range: number): number {
  const { arrow } = rig.conditions;
  const pin = pinForHit(rig, range, NO_WINDAGE);
  const heightAt = (mass: number): number => {
    const conditions = { ...rig.conditions, arrow: withMass(arrow, si(mass)) };
    const speed = rig.launchSpeed * Math.sqrt((arrow.mass + virtualMass) / (mass + virtualMass));
    return impact(flyer(conditions), { ...rig, conditions, launchSpeed: si(speed) }, pin, range).height;
  };
  return (heightAt(arrow.mass + MASS_STEP) - heightAt(arrow.mass - MASS_STEP)) / (2 * MASS_STEP);
}

const ROLLS = 4;

/**
 * How far a crooked arrow hits from a straight one at a range: the root of the mean square over four ways to nock it.
 *
 * @param runout of the middle of the shaft as it turns, from highest to lowest: twice its sag
 * @throws DomainError when the arrow's parts are not known
 */
export function crookedError(rig: Rig, arrow: Arrow, runout: number, range: number): Metres {
  if (runout === 0) return si(0);
  const conditions = { ...rig.conditions, wind: calm };
  const launch = straightLaunch({ ...rig, conditions }, range);
  const straight = at(flyRigid(conditions, rigidLaunch(launch, CLEAN), [range]), 0);
  const squares = Array.from({ length: ROLLS }, (_, k) => {
    const asymmetry = asymmetryOf(arrow, {
      bend: { sag: si(runout / 2), at: si((2 * Math.PI * k) / ROLLS) },
      head: { tilt: si(0), at: si(0) },
      vane: { error: si(0), at: si(0) },
    });
    const hit = at(flyRigid(conditions, rigidLaunch(launch, CLEAN), [range], { asymmetry }), 0);
    return (hit.height - straight.height) ** 2 + (hit.lateral - straight.lateral) ** 2;
  });
  return si(Math.sqrt(squares.reduce((sum, square) => sum + square, 0) / ROLLS));
}
