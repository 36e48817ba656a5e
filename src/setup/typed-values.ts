import { isMap, isScalar, isSeq, parseDocument } from 'yaml';
import { dotted, type KeyPath } from './key-path.ts';

/**
 * What stands at every key of a text that holds a single value, as it was typed, by the dotted path: `marks.0.range` is "40 yd".
 * For a form, so it reads a text with mistakes too, as far as it can be read.
 */
export function typedValues(text: string): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  const visit = (node: unknown, path: KeyPath): void => {
    if (isMap(node))
      for (const { key, value } of node.items) if (isScalar(key)) visit(value, [...path, String(key.value)]);
    if (isSeq(node)) for (const [i, item] of node.items.entries()) visit(item, [...path, i]);
    if (isScalar(node)) found.set(dotted(path), typedText(node.value, node.source));
  };
  try {
    visit(parseDocument(text, { logLevel: 'silent' }).contents, []);
  } catch {
    // Brackets nested by the thousand end the parser; the reader of the setup says so.
  }
  return found;
}

/** Whether the text is YAML without a mistake in its signs and spaces, so that a form may write into it. */
export function isWellFormed(text: string): boolean {
  try {
    return parseDocument(text, { logLevel: 'silent' }).errors.length === 0;
  } catch {
    return false;
  }
}

function typedText(value: unknown, source: string | undefined): string {
  if (value === null) return '';
  return typeof value === 'string' ? value : (source ?? String(value));
}
