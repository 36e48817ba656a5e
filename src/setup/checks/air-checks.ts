import { standardPressure, stationPressure } from '../../atmosphere/standard.ts';
import { fixedDigits, fromSi } from '../../quantities/format.ts';
import { isMetric } from '../schema/refusal.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** How far weather takes the pressure from the standard's; common practice, no source: 1013 hPa less a deep low is about 965. */
const WEATHER_SHARE = 0.05;

/** What the pressures and the altitude must agree on. */
export function airFaults(draft: Draft): readonly Fault[] {
  const { has } = draft;
  if (!has(['air', 'sea_level_pressure'])) return stationFaults(draft);
  if (has(['air', 'pressure']))
    return [
      {
        path: ['air', 'sea_level_pressure'],
        at: 'key',
        reason: 'the pressure is given twice, on the spot and reduced to sea level',
        allowed:
          'pressure as a barometer on the spot reads it, or sea_level_pressure as a weather report gives it',
        write: 'Remove one of them',
      },
    ];
  if (has(['air', 'altitude'])) return reducedFaults(draft);
  return [
    {
      path: ['air', 'altitude'],
      at: 'missing',
      reason: 'is missing: without it the pressure on the spot cannot be worked out from sea_level_pressure',
      allowed: 'the altitude where you shoot',
      write: 'Add "altitude: 820 ft" under "air:"',
    },
  ];
}

/** A pressure at the station that belongs to another altitude. */
function stationFaults({ quantity, text }: Draft): readonly Fault[] {
  const pressure = quantity('air.pressure');
  const altitude = quantity('air.altitude');
  if (pressure === undefined || altitude === undefined) return [];
  const standard = standardPressure(altitude);
  if (Math.abs(pressure / standard - 1) <= WEATHER_SHARE) return [];
  const usual = isMetric(text(['air', 'pressure']) ?? '')
    ? `${fixedDigits(fromSi(standard, 'hPa'), 0)} hPa`
    : `${fixedDigits(fromSi(standard, 'inHg'), 1)} inHg`;
  const there = text(['air', 'altitude'])?.trim();
  return [
    {
      path: ['air', 'pressure'],
      at: 'value',
      reason: `pressure is what a barometer on the spot reads, and at ${there} that is about ${usual}`,
      allowed: 'a pressure within 5 % of the standard one at that altitude',
      write: "Write what the barometer reads there, or put a weather report's value under sea_level_pressure",
    },
  ];
}

/** What the air at a station may weigh down with, as moist-air.ts takes it, Pa. */
const STATION_PRESSURES = [50_000, 110_000] as const;

/** A reduced pressure and an altitude that together leave the formula for air. */
function reducedFaults({ quantity, text }: Draft): readonly Fault[] {
  const reduced = quantity('air.sea_level_pressure');
  const altitude = quantity('air.altitude');
  if (reduced === undefined || altitude === undefined) return [];
  const station = stationPressure(reduced, altitude);
  if (station >= STATION_PRESSURES[0] && station <= STATION_PRESSURES[1]) return [];
  const there = text(['air', 'altitude'])?.trim();
  const onTheSpot = `${fixedDigits(fromSi(station, 'hPa'), 0)} hPa on the spot`;
  return [
    {
      path: ['air', 'sea_level_pressure'],
      at: 'value',
      reason: `at ${there} this means ${onTheSpot}, outside the range of the formula for air`,
      allowed: 'a pressure on the spot between 500 and 1100 hPa',
      write: 'Write what the barometer on the spot reads under "pressure:", or correct the altitude',
    },
  ];
}
