import type { UncertainReadings } from '../../advice/builds/uncertain-readings.ts';
import { shortened } from '../../setup/echoed.ts';
import type { CompareFindings } from './findings.ts';

/** A name of at most so many characters; two that begin alike are told apart by their numbers. */
export type ShortName = (name: string) => string;

/** @param names all that are shown beside one another, each once */
export function shortNames(names: readonly string[], most: number): ShortName {
  const short = new Map<string, string>();
  for (const [i, name] of names.entries()) {
    const cut = shortened(name, most);
    const isTaken = [...short.values()].includes(cut);
    short.set(name, isTaken ? `${shortened(name, most - ` (${i + 1})`.length)} (${i + 1})` : cut);
  }
  return (name) => short.get(name) ?? name;
}

/** The comparison with its builds under other names. */
export function renamed(found: CompareFindings, shortName: ShortName): CompareFindings {
  const { comparison } = found;
  const named = (readings: UncertainReadings): UncertainReadings => ({
    ...readings,
    build: { ...readings.build, name: shortName(readings.build.name) },
  });
  return {
    ...found,
    comparison: {
      ...comparison,
      base: named(comparison.base),
      others: comparison.others.map((contrast) => ({ ...contrast, readings: named(contrast.readings) })),
    },
  };
}
