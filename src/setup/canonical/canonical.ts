import { spokenNumber } from '../../quantities/spoken-number.ts';
import { dotted, isRecord, type KeyPath, type Section, valueAt } from '../key-path.ts';
import type { ReadAs } from '../read-as.ts';
import { keysAt } from '../schema/known-keys.ts';
import { setupSchema } from '../schema/schema.ts';
import { calledIn, plainName, shortFor, unitInName } from './called.ts';
import { sectionAt } from './section-at.ts';
import { isVanes, withVaneWords } from './vane-words.ts';

/** A file with every key under the name and in the place that the schema has for it. */
export interface Canonical {
  readonly value: unknown;
  /** Keys that were written under other names. */
  readonly readAs: readonly ReadAs[];
  /** Where a path of the value was written. */
  readonly writtenAt: (path: KeyPath) => KeyPath;
}

/** A path with the archer's names of keys as the schema has it: `arrow.spine` is arrow.parts.shaft.deflection. */
export function canonicalPath(path: readonly string[]): readonly string[] {
  const found: string[] = [];
  for (const step of path) {
    // Entries of lists are counted.
    const steps = found.map((each) => (/^\d+$/.test(each) ? Number(each) : each));
    found.push(...(calledAt(step, keysAt(setupSchema, steps), steps) ?? [step]));
  }
  return found;
}

/** The file with the archer's names of keys, and values that stand for sections, put in their places. */
export function canonical(root: unknown): Canonical {
  const places = new Map<string, KeyPath>();
  const readAs: ReadAs[] = [];
  const value = renamed(root, [], []);
  return { value, readAs, writtenAt: (path) => writtenAt(places, path) };

  function renamed(node: unknown, path: KeyPath, written: KeyPath): unknown {
    const section = sectionAt(path);
    if (Array.isArray(node)) return node.map((entry, i) => renamed(entry, [...path, i], [...written, i]));
    const short = shortFor(section);
    if (typeof node === 'string' && short !== undefined && /^[\d.\u00bc-\u00be]/.test(node.trim())) {
      places.set(dotted([...path, short]), written);
      readAs.push({ path: dotted(written), found: node, readAs: `${short}: ${node}` });
      return { [short]: node };
    }
    if (!isRecord(node)) return node;
    const keyed = withKeys(node, path, written);
    if (!isVanes(section)) return keyed;
    const { value: vanes, from } = withVaneWords(keyed);
    for (const { key, of, readAs: meant } of from) {
      const place = writtenAt(places, [...path, of]);
      places.set(dotted([...path, key]), place);
      readAs.push({ path: dotted(place), found: String(keyed[of]), readAs: meant });
    }
    return vanes;
  }

  function withKeys(node: Section, path: KeyPath, written: KeyPath): Section {
    const known = keysAt(setupSchema, path);
    let result: Section = {};
    for (const [key, child] of Object.entries(node)) {
      const target = targetOf(key, known, path, node, result) ?? [key];
      const [to, from] = [
        [...path, ...target],
        [...written, key],
      ];
      if (dotted(target) !== key) {
        places.set(dotted(to), from);
        if (dotted(target) !== plainName(key))
          readAs.push({ path: dotted(from), found: key, readAs: dotted(to) });
      }
      result = placed(result, target, renamed(withUnitOfName(key, child), to, from));
    }
    return withHeadShape(result, node, path);
  }
}

/** The key that a name stands for, unless that is given as well or its section is not there to take it. */
function targetOf(
  key: string,
  known: readonly string[],
  path: KeyPath,
  node: Section,
  before: Section,
): readonly string[] | undefined {
  const target = calledAt(key, known, path);
  if (target === undefined) return undefined;
  const free = mayTake(node, target, isSection(node[key], [...path, ...target]));
  return free && valueAt(before, target) === undefined ? target : undefined;
}

/** The key that a name stands for at a path; undefined for a key of the schema, and for what is not known. */
function calledAt(key: string, known: readonly string[], path: KeyPath): readonly string[] | undefined {
  const base = key.replace(/_sd$/, '');
  if (known.length === 0 || known.includes(base)) return undefined;
  const plain = plainName(base);
  const candidates = known.includes(plain) ? [[plain]] : calledIn(sectionAt(path), plain);
  const target = candidates.find(([first]) => first !== undefined && known.includes(first));
  return target?.map((step, i) => (i === target.length - 1 ? `${step}${key.slice(base.length)}` : step));
}

const isSection = (value: unknown, path: KeyPath): boolean =>
  isRecord(value) || shortFor(sectionAt(path)) !== undefined;

/** The number of `yards: 60` is in yards. */
function withUnitOfName(key: string, value: unknown): unknown {
  const unit = unitInName(plainName(key));
  return unit !== undefined && typeof value === 'string' && spokenNumber(value)?.rest === ''
    ? `${value} ${unit}`
    : value;
}

/** A single value moves only into a section that is there; a section is made where it belongs. */
function mayTake(node: Section, [first = '', ...rest]: readonly string[], section: boolean): boolean {
  const child = Object.hasOwn(node, first) ? node[first] : undefined;
  if (rest.length === 0) return child === undefined;
  return child === undefined ? section : isRecord(child) && mayTake(child, rest, section);
}

/** Put at a target, beside what was put there before by a key of its own or by another name. */
const placed = (result: Section, [first = '', ...rest]: readonly string[], value: unknown): Section => ({
  ...result,
  [first]: merged(
    Object.hasOwn(result, first) ? result[first] : undefined,
    rest.length === 0 ? value : placed({}, rest, value),
  ),
});

function merged(before: unknown, value: unknown): unknown {
  if (!isRecord(before) || !isRecord(value)) return value;
  const keys = new Set([...Object.keys(before), ...Object.keys(value)]);
  return Object.fromEntries(
    [...keys].map((key) => [key, key in value ? merged(before[key], value[key]) : before[key]]),
  );
}

/** A broadhead with blades has fixed ones. */
function withHeadShape(section: Section, written: Section, path: KeyPath): Section {
  const { point } = section;
  const head = Object.keys(written).find((key) => plainName(key) === 'broadhead');
  if (head === undefined || !isRecord(point) || 'shape' in point || !('blades' in point)) return section;
  return path.length === 0 ? section : { ...section, point: { ...point, shape: 'fixed_blade' } };
}

function writtenAt(places: ReadonlyMap<string, KeyPath>, path: KeyPath): KeyPath {
  for (let length = path.length; length > 0; length -= 1) {
    const place = places.get(dotted(path.slice(0, length)));
    if (place !== undefined) return [...place, ...path.slice(length)];
  }
  return path;
}
