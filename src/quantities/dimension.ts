import type { DisplayUnit } from './format.ts';

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
