import type { Air } from '../../atmosphere/air.ts';
import { moistAir } from '../../atmosphere/moist-air.ts';
import { USUAL_SPEED_PER_DEGREE } from '../../bow/temperature.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import type { Estimate } from '../../quantities/estimate.ts';
import { type MetresPerSecond, si } from '../../quantities/quantity.ts';
import type { AirSection, SetupFile } from '../schema/schema.ts';
import { assembleAir } from './assemble-air.ts';
import { freeFallOf } from './free-fall-of.ts';

/** What a place has of its own in the flight of an arrow. */
export type PlaceConditions = Pick<FlightConditions, 'air' | 'freeFall'>;

/**
 * The air and the free fall of another place. With an altitude the standard atmosphere there stands for what is not written, as
 * in the air of a file; without one the air here does.
 *
 * @param here of the file
 */
export function placeConditions(
  setup: SetupFile,
  here: PlaceConditions,
  section: AirSection,
): PlaceConditions {
  const { altitude, pressure } = section;
  const air = altitude === undefined ? changedAir(here.air, section) : assembleAir(section);
  const isAsHigh = altitude === undefined && pressure === undefined;
  return { air, freeFall: isAsHigh ? here.freeFall : freeFallOf({ ...setup, air: section }, air) };
}

const changedAir = (here: Air, { temperature, pressure, humidity }: AirSection): Air =>
  moistAir({
    temperature: temperature ?? here.temperature,
    pressure: pressure ?? here.pressure,
    humidity: humidity ?? here.humidity,
  });

/** A difference of temperature that bows are not known to stand: 20 degF, K. */
const NOTICED = 20 * (5 / 9);

/** How a bow takes the temperature of a place. */
export interface Warmth {
  /** Than the air of the file, K. */
  readonly warmer: number;
  readonly faster: Estimate<MetresPerSecond>;
  /** Whether it was measured on this bow, and not taken as usual. */
  readonly isMeasured: boolean;
}

/**
 * How much faster the bow shoots there than in the air of the file. One that was not measured at two temperatures is taken as it
 * is, and farther than 20 degF from it as unsure as bows are.
 */
export function warmthAt(here: Air, there: Air): Warmth {
  const warmer = there.temperature - here.temperature;
  const { value, sd } = USUAL_SPEED_PER_DEGREE;
  const isNoticed = Math.abs(warmer) > NOTICED;
  return {
    warmer,
    faster: { value: si(isNoticed ? value * warmer : 0), sd: si(isNoticed ? sd * Math.abs(warmer) : 0) },
    isMeasured: false,
  };
}
