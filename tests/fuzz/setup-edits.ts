import fc from 'fast-check';
import { at } from '../../src/numerics/at.ts';
import { setupKeys } from '../../src/setup/keys.ts';
import type { Limit } from '../../src/setup/schema/limit.ts';
import { LIMITS, type LimitKey } from '../../src/setup/schema/limits.ts';
import { withUnit } from '../../src/setup/schema/refusal.ts';
import {
  listOf,
  type Pair,
  placeAt,
  scalarOf,
  sectionOf,
  sizeOf,
  type Tree,
  withChanged,
} from './file-tree.ts';
import { CHARACTERS, oddText } from './odd-values.ts';

/** One change to a file, as plain data so that a counter-example can be made small. */
export interface Edit {
  readonly what: What;
  /** Which place of the file, counted round and round. */
  readonly place: number;
  readonly number: number;
  readonly text: string;
  readonly key: string;
}

const WHAT = [
  'replace',
  'replace',
  'replace',
  'within',
  'within',
  'within',
  'known key',
  'known key',
  'drop',
  'double',
  'rename',
  'misspell',
  'nest',
  'swap',
  'lengthen',
  'empty',
  'deepen',
] as const;
type What = (typeof WHAT)[number];

/** The paths of all keys, and their last steps. */
const KEYS = setupKeys();
const NAMES = [...new Set(KEYS.map(({ path }) => path.split('.').at(-1) ?? path))];

const edit = (whats: readonly What[]): fc.Arbitrary<Edit> =>
  fc.record({
    what: fc.constantFrom(...whats),
    place: fc.nat(400),
    number: fc.nat(1000),
    text: oddText,
    key: fc.oneof({ weight: 4, arbitrary: fc.constantFrom(...NAMES) }, { weight: 1, arbitrary: oddText }),
  });

export const anyEdit = edit(WHAT);
/** Changes after which a file is often sound still. */
export const gentleEdit = edit(['within', 'within', 'known key', 'known key', 'drop', 'lengthen', 'swap']);

const isLimit = (path: string): path is LimitKey => Object.hasOwn(LIMITS, path);

/** What the schema says of the key at a path; entries of `builds` have the keys of the arrow. */
function keyAt(path: readonly string[]) {
  const full = path.join('.');
  const own = full.replace(/^builds\.(?=arrow|launch)/, '');
  return KEYS.find((key) => key.path === full) ?? KEYS.find((key) => key.path === own);
}

/** Where in its limits a value is taken: at the ends, just beside them, at nothing, at the example, or somewhere between. */
function withinLimit(limit: Limit, number: number): string {
  const { min, max, example, unit, whole } = limit;
  const share = (number % 97) / 96;
  const spread = [min, max, example, example * (0.8 + 0.4 * share), min + share * (max - min)];
  const value = at(spread, number % spread.length);
  return withUnit(whole === true ? Math.round(value) : Number(value.toPrecision(6)), unit);
}

/** A value that may stand at a path. */
function soundAt(path: readonly string[], { number, text }: Edit): Tree {
  const key = keyAt(path);
  const limited = path.join('.').replace(/^builds\.(?=arrow|launch)/, '');
  if (key?.limit !== undefined) return scalarOf(withinLimit(key.limit, number));
  if (isLimit(limited)) return scalarOf(withinLimit(LIMITS[limited], number));
  if (key?.words !== undefined) return scalarOf(at(key.words, number % key.words.length));
  if (key?.kind === 'section') return sectionOf(...soundPairs(path, number));
  if (key?.kind === 'list') return listOf(sectionOf(...soundPairs(path, number)));
  return scalarOf(text);
}

/** Some of the keys of a section with sound values, the needed ones among them. */
function soundPairs(path: readonly string[], number: number): readonly Pair[] {
  const section = path.join('.');
  const children = KEYS.filter(({ path: child }) => child.startsWith(`${section}.`)).filter(
    ({ path: child }) => !child.slice(section.length + 1).includes('.'),
  );
  return children
    .filter(({ needed }, i) => needed || (number >> (i % 9)) % 3 === 0)
    .map(({ path: child }, i): Pair => {
      const steps = child.split('.');
      const inner: Edit = { what: 'within', place: 0, number: (number * 7 + i) % 1000, text: 'x', key: '' };
      return [at(steps, steps.length - 1), soundAt(steps, inner)];
    });
}

/** The file with one change made. */
export function edited(tree: Tree, edit: Edit): Tree {
  const { what, number, text, key } = edit;
  const index = edit.place % sizeOf(tree);
  const change = (changed: (found: Tree, path: readonly string[]) => Tree): Tree =>
    withChanged(tree, index, changed);
  switch (what) {
    case 'replace':
      return change((found) => (found.kind === 'value' || number % 5 === 0 ? scalarOf(text) : found));
    case 'within':
      return change((found, path) => (found.kind === 'value' ? soundAt(path, edit) : found));
    case 'known key':
      return change((found, path) => withKnownKey(found, path, edit));
    case 'drop':
      return change((found) => withoutOne(found, number));
    case 'double':
      return change((found) => withTwice(found, number));
    case 'rename':
      return change((found) => withRenamed(found, number, () => key));
    case 'misspell':
      return change((found) => withRenamed(found, number, (name) => misspelled(name, number)));
    case 'nest':
      return change((found) => (number % 2 === 0 ? sectionOf([key, found]) : listOf(found)));
    case 'swap': {
      const other = placeAt(tree, number % sizeOf(tree)).found;
      return change(() => other);
    }
    case 'lengthen':
      return change((found) => lengthened(found, number));
    case 'empty':
      return change((found) => at([scalarOf(''), sectionOf(), listOf()], number % 3) ?? found);
    case 'deepen': {
      const wrap = (inner: Tree): Tree => (number % 2 === 0 ? listOf(inner) : sectionOf([key, inner]));
      return change((found) => Array.from({ length: number % 40 }).reduce<Tree>(wrap, found));
    }
  }
}

function withKnownKey(found: Tree, path: readonly string[], edit: Edit): Tree {
  if (found.kind !== 'section') return found;
  const section = path.join('.');
  const under = section === '' ? '' : `${section}.`;
  const children = KEYS.filter(
    ({ path: child }) => child.startsWith(under) && !child.slice(under.length).includes('.'),
  );
  const chosen = children[edit.number % Math.max(1, children.length)];
  if (chosen === undefined) return sectionOf(...found.pairs, [edit.key, scalarOf(edit.text)]);
  const name = chosen.path.slice(under.length);
  const others = found.pairs.filter(([other]) => other !== name);
  return sectionOf(...others, [name, soundAt([...path, name], edit)]);
}

function withoutOne(found: Tree, number: number): Tree {
  if (found.kind === 'value') return found;
  return found.kind === 'list'
    ? listOf(...found.items.filter((_, i) => i !== number % found.items.length))
    : sectionOf(...found.pairs.filter((_, i) => i !== number % found.pairs.length));
}

function withTwice(found: Tree, number: number): Tree {
  if (found.kind === 'value') return found;
  return found.kind === 'list'
    ? listOf(...found.items, ...found.items.slice(number % Math.max(1, found.items.length)).slice(0, 1))
    : sectionOf(...found.pairs, ...found.pairs.slice(number % Math.max(1, found.pairs.length)).slice(0, 1));
}

function withRenamed(found: Tree, number: number, renamed: (name: string) => string): Tree {
  if (found.kind !== 'section') return found;
  return sectionOf(
    ...found.pairs.map(
      ([name, value], i): Pair => [i === number % found.pairs.length ? renamed(name) : name, value],
    ),
  );
}

/** A slip of the finger. */
function misspelled(name: string, number: number): string {
  const place = number % Math.max(1, name.length);
  const [before, here, after] = [name.slice(0, place), name.slice(place, place + 1), name.slice(place + 1)];
  const slips = [
    before + after,
    before + here + here + after,
    name.toUpperCase(),
    `${name}s`,
    before + after + here,
  ];
  const odd = at(CHARACTERS, number % CHARACTERS.length);
  return at(
    [...slips, name.replaceAll('_', '-'), name.replaceAll('_', ' '), before + odd + after],
    number % 8,
  );
}

/** Few entries more, or many. */
const TIMES = [2, 2, 3, 3, 5, 8, 40, 210] as const;

function lengthened(found: Tree, number: number): Tree {
  if (found.kind === 'list') {
    const times = at(TIMES, number % TIMES.length);
    return listOf(...Array.from({ length: times }).flatMap(() => found.items));
  }
  return found.kind === 'value' && number % 4 === 0 ? scalarOf(`${found.text} `.repeat(number % 60)) : found;
}
