import { standardPressure, stationPressure } from '../../atmosphere/standard.ts';
import { fixedDigits, fromSi } from '../../quantities/format.ts';
import type { KeyPath } from '../key-path.ts';
import { isMetric } from '../schema/refusal.ts';
import type { Draft } from './draft.ts';
import type { Fault } from './fault.ts';

/** How far weather takes the pressure from the standard's; common practice, no source: 1013 hPa less a deep low is about 965. */
const WEATHER_SHARE = 0.05;

/** What the pressures and the altitude must agree on, in the file's air, in that of every day and in every place. */
export const airFaults = (draft: Draft): readonly Fault[] => [
  ...faultsOf(draft, { path: ['air'], section: 'air', called: '"air:"' }),
  ...entriesOf(draft).flatMap((path) => faultsOf(draft, { path, section: 'places', called: 'that place' })),
  ...dayAirs(draft).flatMap((path) => faultsOf(draft, { path, section: 'air', called: '"air:"' })),
  ...nameFaults(draft),
];

const entriesOf = ({ count }: Draft): readonly KeyPath[] =>
  Array.from({ length: count(['places']) }, (_, entry) => ['places', entry]);

const dayAirs = ({ count, has }: Draft): readonly KeyPath[] =>
  Array.from({ length: count(['days']) }, (_, i): KeyPath => ['days', i, 'air']).filter(has);

/** Where air is written: a section of the file, or an entry of its places. */
interface Where {
  readonly path: KeyPath;
  readonly section: 'air' | 'places';
  /** In "Add ... under ...". */
  readonly called: string;
}

function faultsOf(draft: Draft, where: Where): readonly Fault[] {
  const { has } = draft;
  const { path, called } = where;
  if (!has([...path, 'sea_level_pressure'])) return stationFaults(draft, where);
  if (has([...path, 'pressure']))
    return [
      {
        path: [...path, 'sea_level_pressure'],
        at: 'key',
        reason: 'the pressure is given twice, on the spot and reduced to sea level',
        allowed:
          'pressure as a barometer on the spot reads it, or sea_level_pressure as a weather report gives it',
        write: 'Remove one of them',
      },
    ];
  if (has([...path, 'altitude'])) return reducedFaults(draft, where);
  return [
    {
      path: [...path, 'altitude'],
      at: 'missing',
      reason: 'is missing: without it the pressure on the spot cannot be worked out from sea_level_pressure',
      allowed: 'the altitude where you shoot',
      write: `Add "altitude: 820 ft" under ${called}`,
    },
  ];
}

/** A pressure at the station that belongs to another altitude. */
function stationFaults({ quantity, text }: Draft, { path, section }: Where): readonly Fault[] {
  const pressure = quantity(`${section}.pressure`, [...path, 'pressure']);
  const altitude = quantity(`${section}.altitude`, [...path, 'altitude']);
  if (pressure === undefined || altitude === undefined) return [];
  const standard = standardPressure(altitude);
  if (Math.abs(pressure / standard - 1) <= WEATHER_SHARE) return [];
  const usual = isMetric(text([...path, 'pressure']) ?? '')
    ? `${fixedDigits(fromSi(standard, 'hPa'), 0)} hPa`
    : `${fixedDigits(fromSi(standard, 'inHg'), 1)} inHg`;
  const there = text([...path, 'altitude'])?.trim();
  return [
    {
      path: [...path, 'pressure'],
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
function reducedFaults({ quantity, text }: Draft, { path, section }: Where): readonly Fault[] {
  const reduced = quantity(`${section}.sea_level_pressure`, [...path, 'sea_level_pressure']);
  const altitude = quantity(`${section}.altitude`, [...path, 'altitude']);
  if (reduced === undefined || altitude === undefined) return [];
  const station = stationPressure(reduced, altitude);
  if (station >= STATION_PRESSURES[0] && station <= STATION_PRESSURES[1]) return [];
  const there = text([...path, 'altitude'])?.trim();
  const onTheSpot = `${fixedDigits(fromSi(station, 'hPa'), 0)} hPa on the spot`;
  return [
    {
      path: [...path, 'sea_level_pressure'],
      at: 'value',
      reason: `at ${there} this means ${onTheSpot}, outside the range of the formula for air`,
      allowed: 'a pressure on the spot between 500 and 1100 hPa',
      write: 'Write what the barometer on the spot reads under "pressure:", or correct the altitude',
    },
  ];
}

/** Places are asked for by name, whatever its upper and lower case. */
function nameFaults(draft: Draft): readonly Fault[] {
  const entries = entriesOf(draft);
  const names = entries.map((entry) => draft.text([...entry, 'name'])?.trim());
  const isTaken = (i: number): boolean =>
    names.slice(0, i).some((name) => name?.toLowerCase() === names[i]?.toLowerCase());
  return entries.flatMap((entry, i): readonly Fault[] => {
    const name = names[i];
    if (name === undefined || !(name === '' || isTaken(i))) return [];
    return [
      {
        path: [...entry, 'name'],
        at: 'value',
        reason: name === '' ? 'a place needs a name' : `"${name}" is already the name of an earlier place`,
        allowed: 'a different name for each place',
        write: name === '' ? 'Write a name, such as "high camp"' : 'Write another name',
      },
    ];
  });
}
