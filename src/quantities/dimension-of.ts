import type { Unit } from 'mathjs';
import type { Dimension } from './dimension.ts';
import { parseUnit } from './units.ts';

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
