import { type DisplayUnits, displayUnits, type UnitSystem } from '../../quantities/display-units.ts';
import type { DisplayUnit } from '../../quantities/format.ts';
import { spokenNumber } from '../../quantities/spoken-number.ts';
import { trimmed } from '../../quantities/trimmed.ts';
import type { BarePurpose, Option } from './option.ts';

/** What a number without a unit is for, by the kind of thing that the option asks for. */
const PURPOSE: Readonly<Record<string, BarePurpose>> = {
  range: 'range',
  ranges: 'range',
  step: 'range',
  length: 'smallLength',
  diameter: 'smallLength',
  altitude: 'height',
  height: 'height',
  angle: 'angle',
  speed: 'speed',
  mass: 'mass',
  temperature: 'temperature',
  pressure: 'pressure',
};

/** A share below this is one already, 0.06; from here on it is a percentage, 6. */
const LEAST_PERCENTAGE = 1;

/**
 * What was written for an option, with the unit of the system put behind numbers that have none: yards for ranges, inches for
 * rings, miles an hour for wind. A list of ranges is taken one by one.
 *
 * @param metres whether ranges count metres, which the question may decide apart from the system
 */
export function withBareUnits(option: Option, written: string, system: UnitSystem, metres: boolean): string {
  if (option.kind !== 'text' && option.kind !== 'optional text' && option.kind !== 'range') return written;
  if (option.of === 'ranges')
    return written
      .split(',')
      .map((each) => withUnitOf(each, metres ? 'm' : 'yd'))
      .join(',');
  if (option.of === 'heights')
    return written
      .split(',')
      .map((each) => withUnitOf(each, displayUnits(system).height))
      .join(',');
  if (option.kind === 'range') return withUnitOf(written, metres ? 'm' : 'yd');
  if (option.of === 'share') return asShare(written);
  const purpose: keyof DisplayUnits | undefined =
    (option.kind === 'text' ? option.bare : undefined) ?? PURPOSE[option.of];
  return purpose === undefined ? written : withUnitOf(written, displayUnits(system)[purpose]);
}

/** 1,250 stays as it is: it may be two numbers. */
function withUnitOf(written: string, unit: DisplayUnit): string {
  const number = spokenNumber(written);
  const [value, other] = number?.values ?? [];
  return number?.rest !== '' || value === undefined || other !== undefined ? written : `${value} ${unit}`;
}

function asShare(written: string): string {
  const number = spokenNumber(written);
  const value = Number(number?.values[0]);
  return number?.rest === '' && value >= LEAST_PERCENTAGE ? `${trimmed(value)} %` : written;
}
