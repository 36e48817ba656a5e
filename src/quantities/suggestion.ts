import { DIMENSIONS, type Dimension } from './dimension.ts';
import { type DisplayUnit, fromSi, siUnitOf, toSi } from './format.ts';
import { nearestWord } from './nearest-word.ts';
import { spokenUnit } from './spoken-unit.ts';
import { trimmed } from './trimmed.ts';

/** Two units to show in "write ...": the one the archer most likely meant, and one of the other system. */
export type Examples = readonly [DisplayUnit, DisplayUnit];

/** A text that should have been a quantity. */
export interface Request {
  readonly text: string;
  readonly dimension: Dimension;
  readonly examples: Examples | undefined;
}

/** Unit names as typed, by what they measure: what a misspelt one may have meant. */
export const SPELLINGS: Readonly<Record<Dimension, readonly string[]>> = {
  length: [
    'in',
    'inch',
    'inches',
    'ft',
    'feet',
    'foot',
    'yd',
    'yard',
    'yards',
    'm',
    'cm',
    'mm',
    'meters',
    'meter',
  ],
  mass: ['gr', 'grain', 'grains', 'gn', 'g', 'gram', 'grams', 'mg', 'kg', 'oz', 'lb', 'lbs'],
  speed: ['fps', 'ft/s', 'm/s', 'mps', 'mph', 'km/h', 'kph', 'knot'],
  angle: ['deg', 'degree', 'degrees', 'rad', 'mrad', 'arcmin', 'moa'],
  temperature: ['degF', 'degC', 'K'],
  pressure: ['inHg', 'hPa', 'mbar', 'kPa', 'Pa', 'mmHg', 'psi'],
  force: ['lbf', 'N', 'kgf'],
  massPerLength: ['gpi', 'gr/in', 'grain/inch', 'g/m', 'kg/m'],
  ratio: ['%', 'percent'],
  time: ['s', 'ms'],
  energy: ['ftlbf', 'ft lbf', 'J'],
  speedPerTemperature: ['fps/degF', 'fps/degC', 'm/s/K'],
};

/** Larger numbers make no example. */
const LARGEST_EXAMPLE = 1e6;

/** `"28.5 in" or "724 mm"`: the number taken as the first unit, and the same in the second; without a usable number, of 1. */
export function inBothUnits(number: number | undefined, [first, second]: Examples): string {
  const value = number !== undefined && Math.abs(number) < LARGEST_EXAMPLE ? number : 1;
  const one = typed(value, first);
  if (first === second || siUnitOf(first) !== siUnitOf(second)) return `"${one}"`;
  const other = typed(Number(fromSi(toSi(value, first), second).toPrecision(3)), second);
  return `"${one}" or "${other}"`;
}

/** A number and a unit as they are typed into the file. */
const typed = (value: number, unit: DisplayUnit): string =>
  unit === '1' ? trimmed(value) : `${trimmed(value)} ${unit}`;

/** The number with the unit it had, put right where it is a slip of the finger, or with the example units when it had none. */
export function quoted(number: string, unit: string, { dimension, examples }: Request): string {
  const name = unit.trim();
  return name === ''
    ? inBothUnits(Number(number), examples ?? DIMENSIONS[dimension].examples)
    : `"${number} ${spokenUnit(name, dimension)?.unit ?? nearestWord(name, SPELLINGS[dimension]) ?? name}"`;
}
