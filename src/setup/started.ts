import type { UnitSystem } from '../quantities/display-units.ts';
import type { Edit } from './edit.ts';
import { starterSetup } from './starter.ts';
import { readYaml } from './yaml/yaml-text.ts';

/**
 * A new setup file in which some measurements are the archer's own: their comments say so, and no longer that they are needed.
 * The parts of the example's arrow stay behind a # unless some of them are the archer's, as they need not come to what this arrow
 * weighs.
 */
export function startedSetup(units: UnitSystem, values: readonly Edit[]): string {
  const text = starterSetup({ units, values });
  const own = linesOf(text, values);
  const lines = text
    .split('\n')
    .map((line, i) =>
      own.has(i + 1) ? line.replace('# NEEDED. ', '# ').replace(/(#.*)\.$/, '$1; yours.') : line,
    );
  const has = (path: string) => values.some((value) => value.path.join('.').startsWith(path));
  const isBehind = has('arrow.parts')
    ? (line: string) => /^ +mass_per_length:/.test(line) && !has('arrow.parts.shaft.mass_per_length')
    : partsOf(lines);
  return lines.map((line) => (isBehind(line) ? behindHash(line) : line)).join('\n');
}

const linesOf = (text: string, values: readonly Edit[]): ReadonlySet<number> => {
  const yaml = readYaml(text);
  return new Set(values.map(({ path }) => yaml.locateKey(path).line));
};

/** The lines from the key of the parts to the end of their section. */
function partsOf(lines: readonly string[]): (line: string) => boolean {
  const from = lines.indexOf('  parts:');
  const length = lines.slice(from).findIndex((line) => line.trim() === '');
  const block = new Set(lines.slice(from, from + length));
  return (line) => block.has(line);
}

/** The line as a comment, in the column of the keys of a section. */
const behindHash = (line: string): string => `  # ${line.slice(2)}`;
