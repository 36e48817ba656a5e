import { isMap, isScalar, isSeq, type Node, parseDocument, stringify, type YAMLMap } from 'yaml';
import type { Edit } from './edit.ts';
import type { KeyPath } from './key-path.ts';
import { LINE_END } from './line-end.ts';
import { plainlyTyped } from './yaml/plainly-typed.ts';

/**
 * The text with values put in. A value that is there is replaced where it stands, and one that is not becomes a line at the
 * end of its section; everything else, comments and spaces included, stays as it was to the byte.
 *
 * @param text a setup file that readSetup accepts
 * @throws Error for a path that names a section or a list, or that leads through a single value
 */
export const withValues = (text: string, edits: readonly Edit[]): string =>
  edits.reduce((edited, edit) => withValue(edited, edit), text);

function withValue(text: string, { path, value }: Edit): string {
  const { contents } = parseDocument(plainlyTyped(text));
  const typed = asTyped(value);
  const fail = (why: string) => new Error(`${path.join('.')} cannot be set: ${why}`);
  let node: unknown = contents;
  for (const [depth, step] of path.entries()) {
    const next: unknown = isMap(node) || isSeq(node) ? node.get(step, true) : undefined;
    if (next === undefined || isEmpty(next)) {
      if (!isMap(node)) throw fail('it leads through a value or beyond the end of a list');
      return withNewKey(text, node, path.slice(depth), typed);
    }
    node = next;
  }
  if (!isScalar(node)) throw fail('it is a section or a list');
  const [start, end] = rangeOf(node);
  return text.slice(0, start) + typed + text.slice(end);
}

const isEmpty = (node: unknown): boolean =>
  isScalar(node) && node.value === null && (node.source ?? '') === '';

/** Quoted where YAML needs it, between { } too, and on one line: a string of JSON is one of YAML. */
export function asTyped(value: string | number): string {
  if (typeof value === 'string' && LINE_END.test(value)) return JSON.stringify(value);
  const list = stringify([value], { collectionStyle: 'flow', lineWidth: 0 });
  return list.replace(/^\[ /, '').replace(/ \]\n$/, '');
}

function withNewKey(text: string, section: YAMLMap, path: KeyPath, typed: string): string {
  const [key = '', ...rest] = path;
  if (section.flow) {
    const nested = rest.reduceRight<string>((inner, step) => `{ ${step}: ${inner} }`, typed);
    const last = endOfLast(section);
    const at = last ?? rangeOf(section)[0] + 1;
    const [before, after] = last === undefined ? [' ', ' '] : [', ', ''];
    return `${text.slice(0, at)}${before}${key}: ${nested}${after}${text.slice(at)}`;
  }
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const indent = indentOf(text, section);
  const there = section.items.find((pair) => isScalar(pair.key) && pair.key.source === String(key));
  const lines =
    rest.length === 0 ? [`${indent}${key}: ${typed}`] : nestedLines(indent, [key, ...rest], typed);
  if (there !== undefined && isNode(there.key)) {
    // the key stands there with nothing after it
    const end = endOfLine(text, rangeOf(there.key)[1]);
    const [, ...under] = lines;
    if (rest.length > 0) return `${text.slice(0, end)}${newline}${under.join(newline)}${text.slice(end)}`;
    const colon = text.indexOf(':', rangeOf(there.key)[1]) + 1;
    return `${text.slice(0, colon)} ${typed}${text.slice(colon)}`;
  }
  const end = endOfLine(text, endOfLast(section) ?? text.length);
  return `${text.slice(0, end)}${newline}${lines.join(newline)}${text.slice(end) || newline}`;
}

const nestedLines = (indent: string, path: KeyPath, typed: string): readonly string[] =>
  path.map(
    (step, depth) => `${indent}${'  '.repeat(depth)}${step}:${depth === path.length - 1 ? ` ${typed}` : ''}`,
  );

const isNode = (node: unknown): node is Node => isMap(node) || isSeq(node) || isScalar(node);

/** Where a node begins and ends in its text. */
export const rangeOf = (node: {
  readonly range?: readonly [number, number, number] | null;
}): readonly [number, number] => (node.range ? [node.range[0], node.range[1]] : [0, 0]);

/** Where the last value of a section ends, blank space and comments after it left out. */
export function endOfLast(section: YAMLMap): number | undefined {
  const last = section.items.at(-1);
  if (last === undefined) return undefined;
  const { key, value } = last;
  if (isMap(value) && !value.flow) return endOfLast(value) ?? rangeOf(value)[1];
  const list = isSeq(value) && !value.flow ? value.items.at(-1) : undefined;
  if (isMap(list) && !list.flow) return endOfLast(list) ?? rangeOf(list)[1];
  const node = list ?? value;
  if (isNode(node) && !isEmpty(node)) return rangeOf(node)[1];
  return isNode(key) ? rangeOf(key)[1] : undefined;
}

/** Where a line ends, before its line end. */
export function endOfLine(text: string, from: number): number {
  const end = text.indexOf('\n', from);
  if (end === -1) return text.length;
  return text[end - 1] === '\r' ? end - 1 : end;
}

/** The spaces in front of the first key of a section. */
export function indentOf(text: string, section: YAMLMap): string {
  const key = section.items[0]?.key;
  const start = isNode(key) ? rangeOf(key)[0] : 0;
  // Some editors begin a file with a mark, which takes no column.
  const before = text.slice(text.lastIndexOf('\n', start - 1) + 1, start);
  return ' '.repeat(before.replace('\ufeff', '').length);
}
