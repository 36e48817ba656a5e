import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import type { KeyPath } from '../key-path.ts';
import { asTyped, endOfLast, endOfLine, indentOf, rangeOf } from '../write.ts';

/** A text with an entry put in, and the line that it stands on. */
export interface WithEntry {
  readonly text: string;
  /** From 1. */
  readonly line: number;
  /** As it stands there, without what is in front of it. */
  readonly entry: string;
}

type Values = Readonly<Record<string, string | undefined>>;

/**
 * The text of a setup file with one more entry at the end of a list; everything else stays as it was to the byte.
 *
 * @param list  the place of the list, by the names that the file has; it is made when there is none, in a section that is there
 * @param entry the keys of the entry with their values as they are to be typed; those without a value are left out
 */
export function withEntry(text: string, list: KeyPath, entry: Values): WithEntry {
  const typed = between(entry);
  return put(text, list, { flow: typed, lines: [typed], told: typed });
}

/** The same with an entry that has a name under a key, and under another key a list of one entry. */
export function withEntryOf(
  text: string,
  list: KeyPath,
  name: readonly [key: string, value: string],
  [inner, entry]: readonly [list: string, entry: Values],
): WithEntry {
  const [named, typed] = [`${name[0]}: ${typedValue(name[1])}`, between(entry)];
  return put(text, list, {
    flow: `{ ${named}, ${inner}: [${typed}] }`,
    lines: [named, `${inner}:`, `  - ${typed}`],
    told: typed,
  });
}

/** It stands in the file with the digits that it was said with. */
const PLAIN_NUMBER = /^-?\d+(?:\.\d+)?$/;
const typedValue = (value: string): string => (PLAIN_NUMBER.test(value) ? value : asTyped(value));

const between = (entry: Values): string =>
  `{ ${Object.entries(entry)
    .flatMap(([key, value]) => (value === undefined ? [] : [`${key}: ${typedValue(value)}`]))
    .join(', ')} }`;

/** An entry between brackets, and in lines of its own without their dash; and the part of it that people are told. */
interface Typed {
  readonly flow: string;
  readonly lines: readonly string[];
  readonly told: string;
}

function put(text: string, list: KeyPath, typed: Typed): WithEntry {
  const { at, added } = placeOf(text, list, typed);
  const written = text.slice(0, at) + added + text.slice(at);
  const line = written.slice(0, at + added.lastIndexOf(typed.told)).split('\n').length;
  return { text: written, line, entry: typed.told };
}

interface Place {
  readonly at: number;
  readonly added: string;
}

function placeOf(text: string, list: KeyPath, { flow, lines }: Typed): Place {
  const document = parseDocument(text);
  const newline = text.includes('\r\n') ? '\r\n' : '\n';
  const block = (indent: string): string =>
    lines.map((line, i) => `${newline}${indent}${i === 0 ? '- ' : '  '}${line}`).join('');
  const section: unknown = list.length === 1 ? document.contents : document.getIn(list.slice(0, -1), true);
  const key = String(list.at(-1));
  const pair = isMap(section)
    ? section.items.find((each) => isScalar(each.key) && String(each.key.value) === key)
    : undefined;
  const value = pair?.value;
  if (isSeq(value) && value.flow) {
    const last = value.items.at(-1);
    return hasRange(last)
      ? { at: rangeOf(last)[1], added: `, ${flow}` }
      : { at: rangeOf(value)[1] - 1, added: flow };
  }
  if (isSeq(value) && value.items.length > 0) {
    const start = rangeOf(value)[0];
    const indent = text.slice(text.lastIndexOf('\n', start - 1) + 1, start);
    return { at: endOfBlock(text, value.items.at(-1)), added: block(indent) };
  }
  if (pair !== undefined && isScalar(pair.key) && isMap(section))
    return {
      at: endOfLine(text, rangeOf(pair.key)[1]),
      added: block(`${section.flow ? '' : indentOf(text, section)}  `),
    };
  if (list.length > 1 && isMap(section)) {
    const end = endOfLast(section) ?? text.length;
    if (section.flow) return { at: end, added: `, ${key}: [${flow}]` };
    const indent = indentOf(text, section);
    return { at: endOfLine(text, end), added: `${newline}${indent}${key}:${block(`${indent}  `)}` };
  }
  const gap = text === '' || text.endsWith('\n') ? '' : newline;
  return { at: text.length, added: `${gap}${newline}${key}:${block('  ')}${newline}` };
}

type Ranged = { readonly range?: readonly [number, number, number] | null };

const hasRange = (node: unknown): node is Ranged => isMap(node) || isSeq(node) || isScalar(node);

/** The end of the line on which an entry ends, its comment with it. */
function endOfBlock(text: string, entry: unknown): number {
  const last = isMap(entry) && !entry.flow ? endOfLast(entry) : undefined;
  if (last !== undefined) return endOfLine(text, last);
  return endOfLine(text, hasRange(entry) ? rangeOf(entry)[1] : text.length);
}
