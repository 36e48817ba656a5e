import type { Air } from '../../atmosphere/air.ts';
import { moistAir } from '../../atmosphere/moist-air.ts';
import {
  standardAir,
  standardPressure,
  standardTemperature,
  stationPressure,
} from '../../atmosphere/standard.ts';
import { calm, type Wind, windFrom } from '../../atmosphere/wind.ts';
import { si } from '../../quantities/quantity.ts';
import type { AirSection, SetupFile, WindSection } from '../schema/schema.ts';
import { defaultOf } from './defaults.ts';

/** The air of a setup; the standard atmosphere fills in what was not measured. */
export function assembleAir(section: AirSection | undefined): Air {
  if (section === undefined) return standardAir(si(0));
  const { altitude, temperature, humidity, pressure, sea_level_pressure: reduced } = section;
  if (pressure === undefined && reduced === undefined && temperature === undefined && humidity === undefined)
    return standardAir(altitude ?? si(0));
  return moistAir({
    temperature:
      temperature ?? (altitude === undefined ? defaultOf('air.temperature') : standardTemperature(altitude)),
    pressure:
      pressure ??
      (reduced === undefined
        ? standardPressure(altitude ?? si(0))
        : stationPressure(reduced, altitude ?? si(0))),
    humidity: humidity ?? defaultOf('air.humidity'),
  });
}

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
