import type { DisplayUnits } from '../quantities/display-units.ts';
import type { DomainError } from '../quantities/domain-error.ts';
import { type DisplayUnit, formatQuantity } from '../quantities/format.ts';

/** What the core names in SI, by the purpose whose unit the reader has chosen for it. */
const PURPOSE: Readonly<Record<string, keyof DisplayUnits>> = {
  m: 'bowLength',
  kg: 'mass',
  'kg/m': 'massPerLength',
  'm/s': 'speed',
  rad: 'angle',
  N: 'force',
  J: 'energy',
};

/** Enough to see what went astray. */
const DIGITS = 3;

/** A value outside what can be computed, as a clause in the units of the answer: "the blade length would be -0.118 in". */
export function domainWords({ quantity, found, allowed }: DomainError, units: DisplayUnits): string {
  if (!Number.isFinite(found)) return `it needs ${allowed}`;
  const [, name = quantity, si = ''] = /^(.*) \(([^()]*)\)$/.exec(quantity) ?? [];
  const purpose = PURPOSE[si];
  return `the ${name} would be ${purpose === undefined ? Number(found.toPrecision(DIGITS)) : shown(found, units[purpose])}`;
}

const shown = (value: number, unit: DisplayUnit): string => formatQuantity(value, unit, DIGITS);
