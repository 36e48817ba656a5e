import { isAlias, isMap, isScalar, isSeq, type Node, Pair, Scalar } from 'yaml';
import type { KeyPath } from '../key-path.ts';
import type { Words } from './yaml-errors.ts';

/** Offsets in the text of a key and of what stands after it. */
export interface TextPlace {
  readonly key: number;
  readonly value: number;
}

/** Something that YAML allows and a setup file does not. */
interface Refused extends Words {
  readonly offset: number;
  readonly path: KeyPath;
  readonly found: string;
}

/** Nobody writes as many keys in a section or entries in a list; a file that is no setup may have a hundred thousand. */
const MOST_KEYS = 200;
const MOST_ENTRIES = 2000;
/**
 * Keys with a value: three hundred marks with every key are half as many. Each that cannot be read takes a third of a
 * millisecond to answer.
 */
export const MOST_VALUES = 5000;

/** A setup has four levels. */
const DEEPEST_LEVEL = 20;

const TAGGED: Words = {
  reason: 'begins with an exclamation mark, which changes how the rest is read',
  allowed: 'the key or the value itself',
  write: 'Remove the word that begins with the exclamation mark',
};

const tagOf = (node: unknown): string | undefined => (isNode(node) && !isAlias(node) ? node.tag : undefined);

/** A key path as the key of a map. */
export const placeId = (path: KeyPath): string => path.join('\0');

/** The document as plain data, every single value as the text it was typed as. */
export function plainOf(contents: unknown) {
  const places = new Map<string, TextPlace>();
  const refused: Refused[] = [];
  const refuse = (offset: number, path: KeyPath, found: string, words: Words) =>
    refused.push({ offset, path, found, ...words });

  let values = 0;
  function plain(node: unknown, path: KeyPath, keyOffset: number): unknown {
    const offset = offsetOf(node) ?? keyOffset;
    const empty = isScalar(node) && node.value === null;
    places.set(placeId(path), { key: keyOffset, value: empty ? keyOffset : offset });
    if (path.length > DEEPEST_LEVEL) {
      refuse(offset, path, '', {
        reason: 'is nested too deep',
        allowed: 'sections at most four deep',
        write: 'Remove the extra levels',
      });
      return undefined;
    }
    const tag = tagOf(node);
    if (tag !== undefined) refuse(offset, path, tag, TAGGED);
    const count = isMap(node) || isSeq(node) ? node.items.length : 0;
    if (count > (isMap(node) ? MOST_KEYS : MOST_ENTRIES)) {
      const [what, most] = isMap(node) ? ['keys', MOST_KEYS] : ['entries', MOST_ENTRIES];
      refuse(offset, path, '', {
        reason: `has ${count} ${what}`,
        allowed: `at most ${most}`,
        write: 'Remove the others, or give the name of a setup file',
      });
      return undefined;
    }
    if (isMap(node)) return section(node.flow ? rejoined(node.items) : node.items, path, keyOffset);
    if (isSeq(node))
      return node.items.map((item, index) => plain(item, [...path, index], offsetOf(item) ?? offset));
    if (isAlias(node)) {
      refuse(offset, path, `*${node.source}`, {
        reason: `"*${node.source}" points to another place in the file`,
        allowed: 'the value itself',
        write: 'Write the value itself',
      });
      return undefined;
    }
    if (!isScalar(node)) return undefined;
    if (node.value === null) return null;
    return typeof node.value === 'string' ? node.value : (node.source ?? String(node.value));
  }

  function section(
    items: readonly Pair[],
    path: KeyPath,
    keyOffset: number,
  ): Readonly<Record<string, unknown>> {
    const entries = new Map<string, unknown>();
    for (const { key, value } of items) {
      const offset = offsetOf(key) ?? keyOffset;
      const name = isScalar(key) && key.value !== null ? (key.source ?? String(key.value)) : undefined;
      const tag = tagOf(key);
      if (tag !== undefined) refuse(offset, [...path, name ?? ''], tag, TAGGED);
      if (name === undefined) {
        refuse(offset, path, '', {
          reason: 'has a key that is not a word',
          allowed: 'a word, a colon, and a value',
          write: 'Write a key as in "speed: 281 fps"',
        });
      } else if (entries.has(name)) {
        refuse(offset, [...path, name], name, {
          reason: `"${name}" is given twice`,
          allowed: 'every key once',
          write: 'Remove one of them',
        });
      } else {
        if (isScalar(value)) values += 1;
        entries.set(name, plain(value, [...path, name], offset));
      }
    }
    return Object.fromEntries(entries);
  }

  const value = plain(contents, [], 0);
  return { value, places, refused, values };
}

/**
 * Between { } a comma ends a value, so that `{ height: 0,5 in }` is a height of 0 and a key "5 in" without a value. Put
 * back together they are a decimal comma, which the reader of quantities can name.
 */
function rejoined(items: readonly Pair[]): readonly Pair[] {
  const kept: Pair[] = [];
  for (const pair of items) {
    const before = kept.at(-1);
    const { key, value } = pair;
    const tail = isScalar(key) && (value ?? null) === null ? key.source : undefined;
    const head = before !== undefined && isScalar(before.value) ? before.value.source : undefined;
    if (
      before === undefined ||
      head === undefined ||
      !/^[+-]?\d+$/.test(head) ||
      !/^\d+(\s*[^\d\s].*)?$/.test(tail ?? '')
    )
      kept.push(pair);
    else kept[kept.length - 1] = new Pair(before.key, joinedScalar(before.value, `${head},${tail}`));
  }
  return kept;
}

function joinedScalar(before: unknown, text: string): Scalar {
  const scalar = new Scalar(text);
  if (isScalar(before) && before.range) scalar.range = before.range;
  return scalar;
}

const offsetOf = (node: unknown): number | undefined =>
  isNode(node) ? (node.range?.[0] ?? undefined) : undefined;

const isNode = (node: unknown): node is Node => isMap(node) || isSeq(node) || isScalar(node) || isAlias(node);
