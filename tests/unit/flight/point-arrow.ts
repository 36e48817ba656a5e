import type { FlyingArrow } from '../../../src/arrow/flying-arrow.ts';
import type { Air } from '../../../src/atmosphere/air.ts';
import { calm } from '../../../src/atmosphere/wind.ts';
import type { FlightConditions } from '../../../src/flight/conditions.ts';
import { STANDARD_GRAVITY } from '../../../src/quantities/exact.ts';
import { si } from '../../../src/quantities/quantity.ts';

/** Dry air at 15 °C and 1013.25 hPa. */
export const seaLevel: Air = {
  temperature: si(288.15),
  pressure: si(101325),
  humidity: si(0),
  density: si(1.225),
  viscosity: si(1.7894e-5),
};

/** An arrow of which only mass, diameter and a constant drag coefficient are known. */
export const pointArrow = (mass: number, diameter: number, dragCoefficient: number): FlyingArrow => ({
  mass: si(mass),
  diameter: si(diameter),
  drag: { at: () => dragCoefficient },
  dragScale: 1,
  attitude: null,
  sideForce: 0,
  balance: si(0.45),
  fletchRadius: si(diameter / 2 + 0.0127),
});

/**
 * A common hunting arrow with figures computed by an independent program: 450 gr, 0.245 in, 2.1/0.9 in vanes 0.5 in tall at 3 deg
 * right helical.
 */
export const spinningArrow: FlyingArrow = {
  ...pointArrow(0.029159509, 0.006223, 2.5),
  attitude: {
    axialInertia: si(2.832e-7),
    transverseInertia: si(2.002e-3),
    spinPerMetre: si(5.19),
    spinUp: si(4.6),
    normalSlope: 30.1,
    firstMoment: si(-30.1 * 0.355),
    secondMoment: si(2 * 0.29 ** 2 + 28.1 * 0.4 ** 2),
    shaftMoments: [0.724, -0.068, 0.038],
  },
};

export const conditionsOf = (arrow: FlyingArrow, more: Partial<FlightConditions> = {}): FlightConditions => ({
  arrow,
  air: seaLevel,
  wind: calm,
  slope: si(0),
  freeFall: STANDARD_GRAVITY,
  eyeHeight: si(1.6),
  place: null,
  ...more,
});
