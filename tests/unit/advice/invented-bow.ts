import type { FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import { si } from '../../../src/quantities/quantity.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { conditionsOf, spinningArrow } from '../flight/point-arrow.ts';
import { inventedRig, yards } from '../sight/invented-rig.ts';

/** The invented bow with an arrow that spins: a right helical. */
export const spinningRig: Rig = { ...inventedRig, conditions: conditionsOf(spinningArrow) };

export const degrees = (count: number): number => (count * Math.PI) / 180;
export const inches = (count: number): number => count * 0.0254;

/** 20 to 100 yd. */
export const courseRanges = [20, 30, 40, 50, 60, 70, 80, 90, 100].map(yards);

export const withArrow = (rig: Rig, change: Partial<FlyingArrow>): Rig => ({
  ...rig,
  conditions: { ...rig.conditions, arrow: { ...rig.conditions.arrow, ...change } },
});

/** Everything that has a right and a left, exchanged. */
export function mirrored(rig: Rig): Rig {
  const { conditions, geometry, cant } = rig;
  const { arrow, wind, place } = conditions;
  return {
    ...rig,
    cant: si(-cant),
    geometry: { ...geometry, lean: si(-geometry.lean) },
    conditions: {
      ...conditions,
      arrow:
        arrow.attitude === null
          ? arrow
          : { ...arrow, attitude: { ...arrow.attitude, spinPerMetre: si(-arrow.attitude.spinPerMetre) } },
      wind: { ...wind, across: si(-wind.across) },
      place: place === null ? null : { ...place, latitude: si(-place.latitude) },
    },
  };
}
