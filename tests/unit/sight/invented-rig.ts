import { si } from '../../../src/quantities/quantity.ts';
import type { Rig } from '../../../src/sight/rig.ts';
import { conditionsOf, pointArrow } from '../flight/point-arrow.ts';

/** An invented hunting bow: 280 ft/s, 4.6 in peep height, pin 33 in from the peep, zeroed at 20 yd. */
export const inventedRig: Rig = {
  conditions: conditionsOf(pointArrow(0.0291595, 0.0062484, 2.5)),
  launchSpeed: si(85.344),
  geometry: {
    peepHeight: si(0.11684),
    peepToPin: si(0.8382),
    freeFlight: si(0.98),
    lean: si(0),
    barAngle: si(0),
  },
  cant: si(0),
  zeroRange: si(18.288),
  zeroSlope: si(0),
  zeroedWith: null,
  scale: { travelPerUnit: 0.001, direction: 1, atZero: 12.4 },
  housingBelowPin: si(0),
};

/** The same bow shooting an arrow without drag, for closed forms. */
export const dragless: Rig = {
  ...inventedRig,
  conditions: conditionsOf(pointArrow(0.0291595, 0.0062484, 0)),
};

export const yards = (count: number): number => count * 0.9144;
