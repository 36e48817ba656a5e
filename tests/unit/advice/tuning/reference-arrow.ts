import { bareShaft } from '../../../../src/advice/tuning/bare-shaft.ts';
import { startFlights } from '../../../../src/advice/tuning/start-flights.ts';
import { buildArrow } from '../../../../src/arrow/build.ts';
import { CLEAN, type Disturbance } from '../../../../src/flight/rigid-launch.ts';
import { DEGREE, INCH } from '../../../../src/quantities/exact.ts';
import { si } from '../../../../src/quantities/quantity.ts';
import { assembled, huntingSetup } from '../../../reference/hunting-setup.ts';

/**
 * The arrow that the independent program's figures are about: its balance point, and strips in free air without what the shaft's
 * layer takes of the vanes' lift.
 */
const hunting = assembled(huntingSetup({}));
if (hunting.arrow.parts === null) throw new Error('the hunting setup names its parts');
export const referenceArrow = buildArrow({
  parts: hunting.arrow.parts,
  totals: {
    mass: hunting.arrow.flying.mass,
    balance: si(0.4555),
    diameter: hunting.arrow.flying.diameter,
    dragCoefficient: 2.5,
  },
  choices: { liftLossesCounted: false },
});
export const referenceBare = bareShaft(referenceArrow, 2.5);
export const referenceRig = {
  ...hunting.rig,
  conditions: { ...hunting.rig.conditions, arrow: referenceArrow.flying },
};
export const referenceFlights = startFlights({
  rig: referenceRig,
  fletched: referenceArrow,
  bare: referenceBare,
  gripAhead: si(27.25 * INCH),
});

/** A start with the tail left by so many degrees, and going left, rad/s. */
export const startOf = (degrees: number, rate: number): Disturbance => ({
  ...CLEAN,
  tailLeft: si(degrees * DEGREE),
  tailLeftRate: si(rate),
});
