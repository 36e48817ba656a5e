import type { Fault } from './checks/fault.ts';
import { echoed, LONGEST_KEY, shortened } from './echoed.ts';
import { counted, dotted, type KeyPath, valueAt } from './key-path.ts';
import type { Problem } from './problem.ts';

/** Characters of what a problem repeats of the file, which may be all of it. */
const LONGEST_PATH = 160;
const LONGEST_FOUND = 160;

interface Details {
  readonly line: number;
  readonly column: number;
  readonly found: string;
  readonly reason: string;
  readonly allowed: string;
  readonly write: string;
}

/** A key path of a setup has six steps at most. */
const MOST_STEPS = 8;

/** A fault in its place, with its message. A line of 0 means the command line. */
export function problemOf(fileName: string, keys: KeyPath, details: Details): Problem {
  const { line, column, found, reason, allowed, write } = details;
  // No key of a setup is so long, nor so deep: what is cut is no key that anybody looks for.
  const path = shortened(dotted(keys), LONGEST_PATH);
  const where = line === 0 ? 'command line' : `${fileName}:${line}:${column}`;
  // "arrow.mass is missing", but "arrow.mass: "4 kg" is above the limit"
  const first = keys.slice(0, MOST_STEPS).map((key) => (typeof key === 'string' ? keyShown(key) : key));
  const steps = `${counted(first).replace(/^, /, '')}${keys.length > MOST_STEPS ? ' …' : ''}`;
  const short = shortened(steps, LONGEST_PATH);
  const isClause = /^(is|has) /.test(reason);
  const name = path === '' && isClause ? 'the file' : short;
  const named = isClause ? `${name} ` : `${name}: `;
  const subject = name === '' ? '' : named;
  const stop = reason.endsWith('.') ? '' : '.';
  const message = echoed(`${where}  ${subject}${reason}${stop} Allowed: ${allowed}. ${write}.`);
  return { line, column, path, found: shortened(found, LONGEST_FOUND), allowed, write, message };
}

/** A key without a letter would not be seen. */
const keyShown = (key: string): string => (key.trim() === '' ? `"${key}"` : shortened(key, LONGEST_KEY));

/** A problem of the file as a whole. */
export const wholeFileProblem = (fileName: string, reason: string, allowed: string, write: string): Problem =>
  problemOf(fileName, [], { line: 1, column: 1, found: '', reason, allowed, write });

/** The text that a fault is about. */
export function foundAt({ path, at }: Fault, root: unknown): string {
  if (at === 'missing') return '';
  const value = valueAt(root, path);
  return at === 'value' && typeof value === 'string' ? value : String(path.at(-1) ?? '');
}
