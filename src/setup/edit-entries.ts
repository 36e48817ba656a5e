import { isMap, isScalar, isSeq, type Node, type Pair, parseDocument, stringify } from 'yaml';
import type { KeyPath } from './key-path.ts';
import { LINE_END } from './line-end.ts';
import { plainlyTyped } from './yaml/plainly-typed.ts';

/** An entry of a list as it is to be typed: `{ range: '40 yd', reading: 16.3 }`. */
export interface Entry {
  readonly [key: string]: string | number | readonly (readonly string[])[] | Entry;
}

const isNode = (node: unknown): node is Node => isMap(node) || isSeq(node) || isScalar(node);

function rangeOf(node: unknown): readonly [start: number, end: number] {
  if (!isNode(node) || !node.range) throw new Error('a part of the text has no place');
  return [node.range[0], node.range[1]];
}

const nodeAt = (root: unknown, path: KeyPath): unknown =>
  path.reduce<unknown>((node, step) => (isMap(node) || isSeq(node) ? node.get(step, true) : undefined), root);

const newlineOf = (text: string): string => (text.includes('\r\n') ? '\r\n' : '\n');
const lineStart = (text: string, at: number): number => text.lastIndexOf('\n', at - 1) + 1;

/** Where the line that holds a place ends, its line end included. */
function lineEnd(text: string, at: number): number {
  const end = text.indexOf('\n', at);
  return end === -1 ? text.length : end + 1;
}

/** On one line, between { }, quoted where YAML needs it; the way of JSON, which YAML reads too, breaks no line. */
function inFlow(entry: Entry): string {
  const text = stringify(entry, { collectionStyle: 'flow', lineWidth: 0 }).replace(/\n$/, '');
  return LINE_END.test(text) ? JSON.stringify(entry) : text;
}

const isEmpty = (node: unknown): boolean =>
  node === undefined || node === null || (isScalar(node) && node.value === null);

/**
 * The text with an entry more at the end of a list of the file's top level; one that is not there is begun at the end of the
 * file. Everything else stays as it was to the byte.
 *
 * @throws Error where something that is no list stands under the key
 */
export function withEntry(text: string, list: string, entry: Entry): string {
  const { contents } = parseDocument(plainlyTyped(text));
  const newline = newlineOf(text);
  const line = `- ${inFlow(entry)}`;
  const node = nodeAt(contents, [list]);
  if (isSeq(node) && node.items.length > 0) {
    const [start, end] = rangeOf(node.items.at(-1));
    if (node.flow) return `${text.slice(0, end)}, ${inFlow(entry)}${text.slice(end)}`;
    const dash = text.lastIndexOf('-', start);
    const indent = ' '.repeat(dash - lineStart(text, dash));
    return inserted(text, lastLineEnd(text, start, end), `${indent}${line}`);
  }
  if (isSeq(node)) {
    const [start, end] = rangeOf(node);
    return `${text.slice(0, start)}[${inFlow(entry)}]${text.slice(end)}`;
  }
  if (!isEmpty(node)) throw new Error(`${list} is not a list`);
  const key = keyPlace(contents, list);
  if (key !== undefined) return inserted(text, lineEnd(text, key), `  ${line}`);
  const before = text === '' || text.endsWith('\n') ? text : `${text}${newline}`;
  return `${before}${list}:${newline}  ${line}${newline}`;
}

/** A block's end may reach over the line ends after it; the entry's own last line is meant. */
function lastLineEnd(text: string, start: number, end: number): number {
  const last = start + text.slice(start, end).trimEnd().length;
  return lineEnd(text, last);
}

function inserted(text: string, at: number, line: string): string {
  const newline = newlineOf(text);
  const before = text.slice(0, at);
  const gap = before.endsWith('\n') || before === '' ? '' : newline;
  return `${before}${gap}${line}${newline}${text.slice(at)}`;
}

function keyPlace(contents: unknown, name: string): number | undefined {
  if (!isMap(contents)) return undefined;
  const pair = contents.items.find(({ key }) => isScalar(key) && key.value === name);
  return pair === undefined ? undefined : rangeOf(pair.key)[1];
}

/**
 * The text without what stands at a path: a key with its value, or an entry of a list. A section or a list that has nothing else
 * goes with it, so that what is left can be read. Comments on other lines stay.
 *
 * @returns the text as it was when nothing stands there
 */
export function without(text: string, path: KeyPath): string {
  const { contents } = parseDocument(plainlyTyped(text));
  const step = path.at(-1);
  const parentPath = path.slice(0, -1);
  const parent = parentPath.length === 0 ? contents : nodeAt(contents, parentPath);
  if (step === undefined || !(isMap(parent) || isSeq(parent)) || !parent.has(step)) return text;
  if (parent.items.length === 1 && parentPath.length > 0) return without(text, parentPath);
  const places = isMap(parent) ? parent.items.map(pairRange) : parent.items.map((item) => rangeOf(item));
  const index = isMap(parent)
    ? parent.items.findIndex(({ key }) => isScalar(key) && key.value === step)
    : Number(step);
  const place = places[index];
  if (place === undefined) return text;
  const [start, end] = place;
  if (parent.flow === true) {
    const [next] = places[index + 1] ?? [];
    const before = places[index - 1]?.[1];
    const [from, to] = next === undefined ? [before ?? start, end] : [start, next];
    return text.slice(0, from) + text.slice(to);
  }
  const from = lineStart(text, start);
  const beginsInList = isMap(parent) && index === 0 && text.slice(from, start).includes('-');
  const to = lastLineEnd(text, start, end);
  const [next] = places[index + 1] ?? [];
  // The first key of an entry stands behind the dash: the next key takes its place there.
  if (beginsInList && next !== undefined) return text.slice(0, start) + text.slice(next);
  return text.slice(0, from) + text.slice(to);
}

function pairRange({ key, value }: Pair): readonly [number, number] {
  const [start, end] = rangeOf(key);
  return [start, isNode(value) && value.range ? Math.max(end, value.range[1]) : end];
}
