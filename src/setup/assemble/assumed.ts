import { standardPressure, standardTemperature } from '../../atmosphere/standard.ts';
import { fixedDigits, fromSi } from '../../quantities/format.ts';
import { si } from '../../quantities/quantity.ts';
import { valueAt } from '../key-path.ts';
import type { AirSection, MarkEntry, SetupFile } from '../schema/schema.ts';
import { DEFAULTS } from './defaults.ts';
import { shotsIn } from './shots.ts';
import { statedSd } from './stated-sd.ts';

/** A default that a setup left standing. */
export interface Assumed {
  readonly key: string;
  /** As the archer would have written it. */
  readonly text: string;
  readonly why: string;
}

/** Keys under these say nothing unless the section itself is in the file. */
const OPTIONAL_SECTIONS = [
  'wind',
  'marks',
  'sight.scale',
  'arrow.parts',
  'arrow.parts.insert',
  'arrow.parts.collar',
  'arrow.parts.vanes',
  'air',
  'sight.tape',
];
/** Defaults that ask for nothing: their absence is the ordinary case. */
const ORDINARY_WHEN_ABSENT = [
  'slope',
  'bow.cant',
  'sight.lean',
  'sight.zero_slope',
  'sight.bar_angle',
  'wind.up',
  'wind.shear',
  'arrow.side_force',
  'sight.tape.travel_ratio',
  'sight.tape.width',
  'eye_height',
  'sight.housing_below_pin',
];

/** Every default the setup leaves in force that could matter to its numbers. */
export const assumedIn = (setup: SetupFile): readonly Assumed[] => [
  ...Object.entries(DEFAULTS)
    .filter(
      ([key]) =>
        !key.endsWith('relative_sd') && !key.endsWith('arrow_spread') && !ORDINARY_WHEN_ABSENT.includes(key),
    )
    .filter(([key]) => has(setup, sectionOf(key)) && !has(setup, key) && isInForce(setup, key))
    .map(([key, { text, why }]) => ({ key, text, why })),
  ...assumedAir(setup),
];

/** The defaults that give way to something other than their own key. */
function isInForce(setup: SetupFile, key: string): boolean {
  const { air, launch } = setup;
  const { marks } = shotsIn(setup);
  if (key === 'launch.speed_per_degree_sd') return launch.speed_per_degree !== undefined;
  if (key === 'marks.on_tape_sd') return marks.some(isPencilledRoughly);
  if (key === 'marks.range_sd') return marks.some(isReadAtUnsureRange);
  if (key === 'marks.arrows') return marks.some(isGroupOfUnknownCount);
  if (key === 'air.temperature') return air?.altitude === undefined && !isStandard(air);
  if (key === 'air.humidity') return !isStandard(air);
  return true;
}

const isGroupOfUnknownCount = (mark: MarkEntry): boolean =>
  mark.arrows === undefined &&
  statedSd.markHeight(mark) === undefined &&
  statedSd.markReading(mark) === undefined;

const isPencilledRoughly = (mark: MarkEntry): boolean =>
  mark.on_tape !== undefined && statedSd.onTape(mark) === undefined;

const isReadAtUnsureRange = (mark: MarkEntry): boolean =>
  (mark.reading !== undefined || mark.on_tape !== undefined) && statedSd.markRange(mark) === undefined;

/** Only the altitude was given: assemble-air.ts takes the standard atmosphere as it is. */
const isStandard = ({ temperature, pressure, sea_level_pressure, humidity }: AirSection = {}): boolean =>
  [temperature, pressure, sea_level_pressure, humidity].every((value) => value === undefined);

/** What the standard atmosphere fills in. */
function assumedAir({ air }: SetupFile): readonly Assumed[] {
  if (air === undefined) return [];
  const { altitude, temperature, pressure, sea_level_pressure: reduced } = air;
  const why = `the standard atmosphere at ${altitude === undefined ? 'sea level' : 'that altitude'}`;
  const assumed: Assumed[] = [];
  if (temperature === undefined && (altitude !== undefined || isStandard(air)))
    assumed.push({
      key: 'air.temperature',
      text: `${fixedDigits(fromSi(standardTemperature(altitude ?? si(0)), 'degF'), 0)} degF`,
      why,
    });
  if (pressure === undefined && reduced === undefined)
    assumed.push({
      key: 'air.pressure',
      text: `${fixedDigits(fromSi(standardPressure(altitude ?? si(0)), 'inHg'), 2)} inHg`,
      why,
    });
  if (isStandard(air)) assumed.push({ key: 'air.humidity', text: '0 %', why });
  return assumed;
}

const has = (setup: SetupFile, key: string): boolean =>
  key === '' || valueAt(setup, key.split('.')) !== undefined;

/** The innermost optional section a key belongs to, or none. */
const sectionOf = (key: string): string =>
  OPTIONAL_SECTIONS.filter((section) => key.startsWith(`${section}.`)).toSorted(
    (a, b) => b.length - a.length,
  )[0] ?? '';
