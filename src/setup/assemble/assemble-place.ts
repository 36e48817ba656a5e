import type { Air } from '../../atmosphere/air.ts';
import { moistAir } from '../../atmosphere/moist-air.ts';
import type { FlightConditions } from '../../flight/conditions.ts';
import type { Rig } from '../../sight/rig.ts';
import type { AirSection, SetupFile } from '../schema/schema.ts';
import { assembleAir } from './assemble-air.ts';
import { freeFallOf } from './free-fall-of.ts';

/** What a place has of its own in the flight of an arrow. */
export type PlaceConditions = Pick<FlightConditions, 'air' | 'freeFall'>;

/**
 * The air and the free fall of another place. With an altitude the standard atmosphere there stands for what is not written, as in
 * the air of a file; without one the air here does.
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

/** A rig in the air of a place. */
export const rigAt =
  (place: PlaceConditions) =>
  (rig: Rig): Rig => ({ ...rig, conditions: { ...rig.conditions, ...place } });
