import fc from 'fast-check';
import { at } from '../../src/numerics/at.ts';
import type { Tree } from './file-tree.ts';
import { CHARACTERS, SIGNS } from './odd-values.ts';

/** How a file is typed: what no two people do alike. */
export interface Style {
  readonly newline: '\n' | '\r\n' | '\r';
  readonly indent: number;
  readonly tabs: boolean;
  /** From this level on between brackets. */
  readonly flowFrom: number;
  /** Around values: where YAML needs them, always one kind, or never. */
  readonly quotes: 'needed' | 'double' | 'single' | 'never';
  readonly mark: boolean;
}

export const PLAIN_STYLE: Style = {
  newline: '\n',
  indent: 2,
  tabs: false,
  flowFrom: 3,
  quotes: 'needed',
  mark: false,
};

const often = <T>(usual: T, ...others: readonly T[]): fc.Arbitrary<T> =>
  fc.oneof(
    { weight: 8, arbitrary: fc.constant(usual) },
    { weight: 2, arbitrary: fc.constantFrom(...others) },
  );

export const style: fc.Arbitrary<Style> = fc.record({
  newline: often<Style['newline']>('\n', '\r\n', '\r\n', '\r'),
  indent: often(2, 1, 4, 8, 0),
  tabs: often(false, false, false, true),
  flowFrom: often(2, 0, 1, 3, 9),
  quotes: often<Style['quotes']>('needed', 'double', 'single', 'never'),
  mark: often(false, true),
});

/** The text of a tree. With quotes where they are needed it says what the tree says. */
export function typed(tree: Tree, style: Style): string {
  const lines = linesOf(tree, 0, style);
  return `${style.mark ? '\ufeff' : ''}${lines.join(style.newline)}${style.newline}`;
}

function linesOf(tree: Tree, level: number, style: Style): readonly string[] {
  const flow = level >= style.flowFrom;
  if (tree.kind === 'value' || flow) return [inFlow(tree, style)];
  const below = (inner: readonly string[]): readonly string[] => inner.map((line) => margin(style) + line);
  if (tree.kind === 'section' && tree.pairs.length > 0)
    return tree.pairs.flatMap(([key, value]) => {
      const inner = linesOf(value, level + 1, style);
      const isShort = value.kind === 'value' || level + 1 >= style.flowFrom || isEmpty(value);
      return isShort
        ? [`${keyText(key, style)}: ${inner.join(' ')}`]
        : [`${keyText(key, style)}:`, ...below(inner)];
    });
  if (tree.kind === 'list' && tree.items.length > 0)
    return tree.items.flatMap((item) => {
      const [first = '', ...rest] = linesOf(item, level + 1, style);
      return [`- ${first}`, ...rest.map((line) => `  ${line}`)];
    });
  return [inFlow(tree, style)];
}

const isEmpty = (tree: Tree): boolean =>
  tree.kind === 'value' || (tree.kind === 'section' ? tree.pairs : tree.items).length === 0;

const margin = ({ indent, tabs }: Style): string => (tabs ? '\t' : ' '.repeat(indent));

function inFlow(tree: Tree, style: Style): string {
  switch (tree.kind) {
    case 'value':
      return quoted(tree.text, style);
    case 'list':
      return `[${tree.items.map((item) => inFlow(item, style)).join(', ')}]`;
    case 'section':
      return `{ ${tree.pairs.map(([key, value]) => `${keyText(key, style)}: ${inFlow(value, style)}`).join(', ')} }`;
  }
}

const keyText = (key: string, style: Style): string =>
  /^[a-z_]+$/i.test(key) || style.quotes === 'never' ? key : quoted(key, { ...style, quotes: 'needed' });

/** Letters, digits and signs that mean nothing to YAML. */
const HARMLESS = /^[\w.][\w./%+\u00b0 -]*$/;

function quoted(text: string, { quotes }: Style): string {
  if (quotes === 'never' || (quotes === 'needed' && HARMLESS.test(text) && !text.endsWith(' '))) return text;
  // JSON's strings are YAML's
  return quotes === 'single' ? `'${text.replaceAll("'", "''")}'` : JSON.stringify(text);
}

/** A change to the text itself, wherever it falls. */
export interface Slip {
  readonly what: 'insert' | 'delete' | 'double' | 'byte' | 'line';
  readonly place: number;
  readonly number: number;
  readonly text: string;
}

export const slip: fc.Arbitrary<Slip> = fc.record({
  what: fc.constantFrom('insert', 'delete', 'double', 'byte', 'line'),
  place: fc.nat(4000),
  number: fc.nat(300),
  text: fc.constantFrom(...CHARACTERS, ...SIGNS, ' ', '  ', '\n', ':', ': ', '- '),
});

export function slipped(text: string, { what, place, number, text: put }: Slip): string {
  const index = place % (text.length + 1);
  switch (what) {
    case 'insert':
      return text.slice(0, index) + put + text.slice(index);
    case 'delete':
      return text.slice(0, index) + text.slice(index + 1 + (number % 30));
    case 'double':
      return text.slice(0, index) + text.slice(Math.max(0, index - number)) + text.slice(index);
    case 'byte':
      return withByte(text, index, number % 256);
    case 'line': {
      const lines = text.split('\n');
      const [from, to] = [place % lines.length, number % lines.length];
      const moved = at(lines, from);
      return lines.toSpliced(from, 1).toSpliced(to, 0, moved).join('\n');
    }
  }
}

/** One byte of the file is another, read as a door reads it: what is no UTF-8 becomes a sign of its own. */
function withByte(text: string, index: number, byte: number): string {
  const bytes = Buffer.from(text, 'utf8');
  if (bytes.length > 0) bytes[index % bytes.length] = byte;
  return bytes.toString('utf8');
}
