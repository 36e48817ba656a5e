import { isAlias, isMap, isScalar, isSeq, LineCounter, type Node, Pair, parseDocument, Scalar } from 'yaml';
import type { KeyPath } from './key-path.ts';
import { inOwnWords } from './yaml-errors.ts';

export interface Position {
  readonly line: number;
  readonly column: number;
}

/** Something that keeps the text from being read as sections, lists and values. */
export interface TextProblem extends Position {
  readonly path: KeyPath;
  readonly found: string;
  readonly reason: string;
  readonly allowed: string;
  readonly write: string;
}

/** The file as sections (records), lists (arrays) and texts (every single value, as it was typed). */
export interface YamlText {
  readonly value: unknown;
  /** Faults of the text itself: what follows the first of them may have been misread. */
  readonly syntax: readonly TextProblem[];
  /** Things that YAML allows and a setup file does not. */
  readonly refused: readonly TextProblem[];
  /** Where a path's value stands, or the deepest section of it that exists. */
  readonly locate: (path: KeyPath) => Position;
  /** Where a path's last key stands. */
  readonly locateKey: (path: KeyPath) => Position;
}

/** A setup has four levels. */
const DEEPEST = 20;

interface Place {
  readonly key: number;
  readonly value: number;
}

/**
 * The text of a setup file as plain data, with the place of every value. Every single value stays the text it was typed as,
 * so that what looks like a number to YAML is read by the rules of quantities. Aliases are refused rather than followed.
 */
export function readYaml(text: string): YamlText {
  const lines = new LineCounter();
  // duplicate keys are found below: YAML's own search takes a time quadratic in the number of keys
  const document = parseDocument(text, {
    lineCounter: lines,
    uniqueKeys: false,
    version: '1.2',
    schema: 'core',
  });
  const places = new Map<string, Place>();
  const positionAt = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line, column: col };
  };
  const placeOf = (path: KeyPath): Place => {
    for (let length = path.length; length >= 0; length -= 1) {
      const place = places.get(idOf(path.slice(0, length)));
      if (place !== undefined) return length === path.length ? place : { key: place.key, value: place.key };
    }
    return { key: 0, value: 0 };
  };
  const walk = walker(places, positionAt);
  const value = walk.plain(document.contents, [], 0);
  const syntax = document.errors.map((error) => ({
    ...positionAt(error.pos[0]),
    path: [],
    found: lineOf(text, error.pos[0]),
    ...inOwnWords(error.code),
  }));
  return {
    value,
    syntax,
    refused: walk.problems,
    locate: (path) => positionAt(placeOf(path).value),
    locateKey: (path) => positionAt(placeOf(path).key),
  };
}

const idOf = (path: KeyPath): string => path.join('\0');

const lineOf = (text: string, offset: number): string => {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  return text.slice(start).split('\n', 1).join('').trim().slice(0, 60);
};

function walker(places: Map<string, Place>, positionAt: (offset: number) => Position) {
  const problems: TextProblem[] = [];
  const refuse = (
    offset: number,
    path: KeyPath,
    found: string,
    rest: Pick<TextProblem, 'reason' | 'allowed' | 'write'>,
  ) => problems.push({ ...positionAt(offset), path, found, ...rest });

  function plain(node: unknown, path: KeyPath, keyOffset: number): unknown {
    const offset = offsetOf(node) ?? keyOffset;
    const empty = isScalar(node) && node.value === null;
    places.set(idOf(path), { key: keyOffset, value: empty ? keyOffset : offset });
    if (path.length > DEEPEST) {
      refuse(offset, path, '', {
        reason: 'is nested too deep',
        allowed: 'sections at most four deep',
        write: 'Remove the extra levels',
      });
      return undefined;
    }
    if (isMap(node)) return section(node.flow ? rejoined(node.items) : node.items, path, keyOffset);
    if (isSeq(node))
      return node.items.map((item, index) => plain(item, [...path, index], offsetOf(item) ?? offset));
    if (isAlias(node)) {
      refuse(offset, path, `*${node.source}`, {
        reason: `"*${node.source}" points to another place of the file`,
        allowed: 'the value itself',
        write: 'Write the value out',
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
      if (name === undefined) {
        refuse(offset, path, '', {
          reason: 'has a key that is not a word',
          allowed: 'a word, a colon, and a value',
          write: 'Write a key as in "speed: 281 fps"',
        });
      } else if (entries.has(name)) {
        refuse(offset, [...path, name], name, {
          reason: `"${name}" is there twice`,
          allowed: 'every key once',
          write: 'Remove one of them',
        });
      } else {
        entries.set(name, plain(value, [...path, name], offset));
      }
    }
    return Object.fromEntries(entries);
  }

  return { plain, problems };
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
