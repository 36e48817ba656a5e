import type { Air } from '../../atmosphere/air.ts';
import { moistAir } from '../../atmosphere/moist-air.ts';
import {
  standardAir,
  standardPressure,
  standardTemperature,
  stationPressure,
} from '../../atmosphere/standard.ts';
import { calm, type Wind, windFrom } from '../../atmosphere/wind.ts';
import { type Kelvin, type Metres, type Pascals, si } from '../../quantities/quantity.ts';
import type { AirSection, SetupFile, WindSection } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';

/** The altitude of a place that the file does not give. */
const SEA_LEVEL: Metres = si(0);

/** The air of a setup; the standard atmosphere fills in what was not measured. */
export function assembleAir(section: AirSection | undefined): Air {
  if (section === undefined) return standardAir(SEA_LEVEL);
  const { altitude, temperature, humidity, pressure, sea_level_pressure: reduced } = section;
  if (pressure === undefined && reduced === undefined && temperature === undefined && humidity === undefined)
    return standardAir(altitude ?? SEA_LEVEL);
  return moistAir({
    temperature: temperature ?? usualTemperature(altitude),
    pressure: pressure ?? usualPressure(reduced, altitude ?? SEA_LEVEL),
    humidity: humidity ?? defaultOf('air.humidity'),
  });
}

const usualTemperature = (altitude: Metres | undefined): Kelvin =>
  altitude === undefined ? defaultOf('air.temperature') : standardTemperature(altitude);

const usualPressure = (reduced: Pascals | undefined, altitude: Metres): Pascals =>
  reduced === undefined ? standardPressure(altitude) : stationPressure(reduced, altitude);

export function assembleWind(
  section: WindSection | undefined,
  { eye_height: eye }: Pick<SetupFile, 'eye_height'>,
): Wind {
  if (section === undefined) return calm;
  return windFrom(
    section.speed,
    section.from ?? defaultOf('wind.from'),
    section.shear ?? defaultOf('wind.shear'),
    section.measured_height ?? eye ?? defaultOf('eye_height'),
    section.up ?? defaultOf('wind.up'),
  );
}
