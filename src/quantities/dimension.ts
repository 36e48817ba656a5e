import type { Unit } from 'mathjs';
import type { DisplayUnit } from './format.ts';
import { parseUnit } from './units.ts';

/** The SI unit behind each kind of quantity that an archer may write. */
export interface SiUnit {
  length: 'm';
  mass: 'kg';
  speed: 'm/s';
  angle: 'rad';
  temperature: 'K';
  pressure: 'Pa';
  force: 'N';
  massPerLength: 'kg/m';
  ratio: '1';
  time: 's';
  energy: 'J';
  speedPerTemperature: 'm/s/K';
}
export type Dimension = keyof SiUnit;

interface DimensionFacts {
  /** With its article, as a sentence needs it. */
  readonly name: string;
  /** What an error asks the archer to write: the trade's unit first. */
  readonly examples: readonly [DisplayUnit, DisplayUnit];
}

export const DIMENSIONS: Readonly<Record<Dimension, DimensionFacts>> = {
  length: { name: 'a length', examples: ['in', 'mm'] },
  mass: { name: 'a mass', examples: ['gr', 'g'] },
  speed: { name: 'a speed', examples: ['fps', 'm/s'] },
  angle: { name: 'an angle', examples: ['deg', 'deg'] },
  temperature: { name: 'a temperature', examples: ['degF', 'degC'] },
  pressure: { name: 'a pressure', examples: ['inHg', 'hPa'] },
  force: { name: 'a force', examples: ['lbf', 'N'] },
  massPerLength: { name: 'a mass per length', examples: ['gpi', 'g/m'] },
  ratio: { name: 'a number without a unit', examples: ['%', '1'] },
  time: { name: 'a time', examples: ['s', 's'] },
  energy: { name: 'an energy', examples: ['ftlbf', 'J'] },
  speedPerTemperature: { name: 'a speed per degree', examples: ['fps/degF', 'm/s/K'] },
};

/** An SI unit of each dimension in mathjs's spelling, to compare with what was written. */
const SI_IN_MATHJS: Readonly<Record<Dimension, string>> = {
  length: 'm',
  mass: 'kg',
  speed: 'm/s',
  angle: 'rad',
  temperature: 'K',
  pressure: 'Pa',
  force: 'N',
  massPerLength: 'kg/m',
  ratio: 'percent',
  time: 's',
  energy: 'J',
  speedPerTemperature: 'm/s/K',
};

const kinds = new Map<Dimension, Unit>();

/** Whether `written` measures the kind of thing that `dimension` names. */
export function isOfDimension(written: Unit, dimension: Dimension): boolean {
  const known = kinds.get(dimension) ?? parseUnit(SI_IN_MATHJS[dimension]);
  kinds.set(dimension, known);
  return written.equalBase(known);
}

const everyDimension: readonly Dimension[] = [
  'length',
  'mass',
  'speed',
  'angle',
  'temperature',
  'pressure',
  'force',
  'massPerLength',
  'ratio',
  'time',
  'energy',
  'speedPerTemperature',
];

/** The dimension of what was written, or undefined when an archer has no use for it. */
export const dimensionOf = (written: Unit): Dimension | undefined =>
  everyDimension.find((dimension) => isOfDimension(written, dimension));
