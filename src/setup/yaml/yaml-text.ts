import { LineCounter, parseDocument } from 'yaml';
import type { KeyPath } from '../key-path.ts';
import { plainlyTyped } from './plainly-typed.ts';
import { placeId, plainOf, type TextPlace } from './yaml-plain.ts';
import { syntaxFaults } from './yaml-syntax.ts';

interface Position {
  readonly line: number;
  readonly column: number;
}

/** Something that keeps the text from being read as sections, lists and values. */
interface TextProblem extends Position {
  readonly path: KeyPath;
  readonly found: string;
  readonly reason: string;
  readonly allowed: string;
  readonly write: string;
}

/** The file as sections (records), lists (arrays) and texts (every single value, as it was typed). */
export interface YamlText {
  readonly value: unknown;
  /** How many keys have a single value. */
  readonly values: number;
  /** Faults of the text itself: what follows the first of them may have been misread. */
  readonly syntax: readonly TextProblem[];
  /** Things that YAML allows and a setup file does not. */
  readonly refused: readonly TextProblem[];
  /** Where a path's value stands, or the deepest section of it that exists. */
  readonly locate: (path: KeyPath) => Position;
  /** Where a path's last key stands. */
  readonly locateKey: (path: KeyPath) => Position;
}

/**
 * The text of a setup file as plain data, with the place of every value. Every single value stays the text it was typed as,
 * so that what looks like a number to YAML is read by the rules of quantities. Aliases are refused rather than followed.
 */
export function readYaml(text: string): YamlText {
  const lines = new LineCounter();
  // duplicate keys are found below: YAML's own search takes a time quadratic in the number of keys
  const document = withoutTraces(() =>
    parseDocument(plainlyTyped(text), {
      lineCounter: lines,
      uniqueKeys: false,
      // each pretty message copies the rest of its line, which may be all of the file
      prettyErrors: false,
      version: '1.2',
      schema: 'core',
    }),
  );
  const { value, refused, places, values } = plainOf(document.contents);
  const positionAt = (offset: number): Position => {
    const { line, col } = lines.linePos(offset);
    return { line, column: col };
  };
  const placeOf = (path: KeyPath): TextPlace => {
    for (let length = path.length; length >= 0; length -= 1) {
      const place = places.get(placeId(path.slice(0, length)));
      if (place !== undefined) return length === path.length ? place : { key: place.key, value: place.key };
    }
    return { key: 0, value: 0 };
  };
  const syntax = syntaxFaults(document).map(({ offset, words }) => {
    const position = positionAt(offset);
    const start = offset - position.column + 1;
    return { ...position, path: [], found: lineFrom(text, start), ...words };
  });
  return {
    value,
    values,
    syntax,
    refused: refused.map(({ offset, ...rest }) => ({ ...positionAt(offset), ...rest })),
    locate: (path) => positionAt(placeOf(path).value),
    locateKey: (path) => positionAt(placeOf(path).key),
  };
}

/**
 * The parser makes an Error of every fault of the text, a hundred thousand of them in a file that is no setup. Where each was
 * made is of no interest, and takes most of the memory.
 */
function withoutTraces<T>(parse: () => T): T {
  const { stackTraceLimit } = Error;
  Error.stackTraceLimit = 0;
  try {
    return parse();
  } finally {
    Error.stackTraceLimit = stackTraceLimit;
  }
}

/** Long enough to recognise a line by. */
const ECHOED = 60;
/** More indentation than any line has. */
const INDENTED = 100;

/** The beginning of the line that starts at an offset. A line may be as long as the file, and have as many faults. */
const lineFrom = (text: string, start: number): string =>
  text
    .slice(start, start + INDENTED + ECHOED)
    .split('\n', 1)
    .join('')
    .trim()
    .slice(0, ECHOED);
