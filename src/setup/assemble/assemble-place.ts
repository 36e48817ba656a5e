import type { Air } from '../../atmosphere/air.ts';
import { moistAir } from '../../atmosphere/moist-air.ts';
import { USUAL_SPEED_PER_DEGREE } from '../../bow/temperature.ts';
import type { Calibration } from '../../calibration/fit.ts';
import { PARAMETERS, parameterIn } from '../../calibration/parameters.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import { at } from '../../numerics/at.ts';
import type { Estimate } from '../../quantities/estimate.ts';
import { type MetresPerSecond, si } from '../../quantities/quantity.ts';
import type { AirSection, SetupFile } from '../schema/schema.ts';
import { assembleAir } from './assemble-air.ts';
import { freeFallOf } from './free-fall-of.ts';

/** What a place has of its own in the flight of an arrow. */
export type PlaceConditions = Pick<FlightConditions, 'air' | 'freeFall'>;

/**
 * The air and the free fall of another place. With an altitude the standard atmosphere there stands for what is not written,
 * as in the air of a file; without one the air here does.
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
  /** Covariance of its error with that of each of PARAMETERS. */
  readonly shared: readonly number[];
  /** Whether it was measured on this bow or stands in the file, and was not taken as usual. */
  readonly isMeasured: boolean;
}

/**
 * How much faster the bow shoots there than in the air of the file: by what the fit says of it. One of which the file says
 * nothing, and that was not shot at two temperatures, is taken as it is, and farther than 20 degF from it as unsure as bows are.
 */
export function warmthAt({
  calibration,
  here,
  there,
}: {
  readonly calibration: Calibration;
  readonly here: Air;
  readonly there: Air;
}): Warmth {
  const warmer = there.temperature - here.temperature;
  const { names, values, covariance } = calibration;
  const place = names.indexOf('speed_per_degree');
  if (place >= 0) {
    const row = at(covariance, place);
    const perDegree = { value: parameterIn(values, 'speed_per_degree'), sd: Math.sqrt(at(row, place)) };
    return {
      warmer,
      faster: { value: si(perDegree.value * warmer), sd: si(perDegree.sd * Math.abs(warmer)) },
      shared: PARAMETERS.map((_, j) => at(row, j) * warmer),
      isMeasured: true,
    };
  }
  const { value, sd } = USUAL_SPEED_PER_DEGREE;
  const isNoticed = Math.abs(warmer) > NOTICED;
  return {
    warmer,
    faster: { value: si(isNoticed ? value * warmer : 0), sd: si(isNoticed ? sd * Math.abs(warmer) : 0) },
    shared: PARAMETERS.map(() => NOT_SHARED),
    isMeasured: false,
  };
}

/** An error that no parameter of the fit has in common. */
const NOT_SHARED = 0;
