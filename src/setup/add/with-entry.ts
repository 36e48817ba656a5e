import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { asTyped, endOfLine, rangeOf } from '../write.ts';

/** A text with an entry put in, and the line that it stands on. */
export interface WithEntry {
  readonly text: string;
  /** From 1. */
  readonly line: number;
  /** As it stands there, without what is in front of it. */
  readonly entry: string;
}

/**
 * The text of a setup file with one more entry at the end of a list; everything else stays as it was to the byte.
 *
 * @param list  the key of the list at the top of the file, as the file calls it; it is made when there is none
 * @param entry the keys of the entry with their values as they are to be typed; those without a value are left out
 */
export function withEntry(
  text: string,
  list: string,
  entry: Readonly<Record<string, string | undefined>>,
): WithEntry {
  const keys = Object.entries(entry).flatMap(([key, value]) =>
    value === undefined ? [] : [`${key}: ${PLAIN_NUMBER.test(value) ? value : asTyped(value)}`],
  );
  const typed = `{ ${keys.join(', ')} }`;
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const { at, put } = placeOf(text, list, typed, newline);
  const written = text.slice(0, at) + put + text.slice(at);
  const line = written.slice(0, at + put.lastIndexOf(typed)).split('\n').length;
  return { text: written, line, entry: typed };
}

function placeOf(
  text: string,
  list: string,
  typed: string,
  newline: string,
): { readonly at: number; readonly put: string } {
  const { contents } = parseDocument(text);
  const pair = isMap(contents)
    ? contents.items.find(({ key }) => isScalar(key) && String(key.value) === list)
    : undefined;
  const value = pair?.value;
  if (isSeq(value) && value.flow) {
    const last = value.items.at(-1);
    const end = rangeOf(value)[1] - 1;
    return hasRange(last) ? { at: rangeOf(last)[1], put: `, ${typed}` } : { at: end, put: typed };
  }
  if (isSeq(value) && value.items.length > 0) {
    const start = rangeOf(value)[0];
    const indent = text.slice(text.lastIndexOf('\n', start - 1) + 1, start);
    const last = endOfBlock(text, value.items.at(-1));
    return { at: last, put: `${newline}${indent}- ${typed}` };
  }
  if (pair !== undefined && isScalar(pair.key)) {
    const end = endOfLine(text, rangeOf(pair.key)[1]);
    return { at: end, put: `${newline}  - ${typed}` };
  }
  const gap = text === '' || text.endsWith('\n') ? '' : newline;
  return { at: text.length, put: `${gap}${newline}${list}:${newline}  - ${typed}${newline}` };
}

/** It stands in the file with the digits that it was said with. */
const PLAIN_NUMBER = /^-?\d+(?:\.\d+)?$/;

type Ranged = { readonly range?: readonly [number, number, number] | null };

const hasRange = (node: unknown): node is Ranged => isMap(node) || isSeq(node) || isScalar(node);

/** The end of the line on which an entry ends, its comment with it. */
function endOfBlock(text: string, entry: unknown): number {
  const last = isMap(entry) && !entry.flow ? entry.items.at(-1) : undefined;
  const node = [last?.value, last?.key, entry].find(hasRange);
  return endOfLine(text, node === undefined ? text.length : rangeOf(node)[1]);
}
