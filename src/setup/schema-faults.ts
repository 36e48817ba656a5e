import type * as z from 'zod/mini';
import { nearestWord } from '../quantities/nearest-word.ts';
import type { Fault } from './fault.ts';
import type { KeyPath } from './key-path.ts';
import { keysAt } from './known-keys.ts';
import type { LeafProblem } from './leaf.ts';
import { setupSchema } from './schema.ts';

type Issue = z.core.$ZodIssue;

/** What the schema objects to, in the archer's words. */
export const schemaFaults = (issues: readonly Issue[]): readonly Fault[] =>
  issues.flatMap((issue) => faultsOf(issue, []));

function faultsOf(issue: Issue, prefix: KeyPath): readonly Fault[] {
  const path: KeyPath = [
    ...prefix,
    ...issue.path.map((step) => (typeof step === 'number' ? step : String(step))),
  ];
  switch (issue.code) {
    case 'custom':
      return [leafFault(path, issue.params)];
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(path, key));
    case 'invalid_union': {
      // the only union is a number or a table; the table's own faults matter when a list was written
      const [table = [], number = []] = issue.errors;
      const branch = table.some(({ code, path: at }) => code === 'invalid_type' && at.length === 0)
        ? number
        : table;
      return branch.flatMap((each) => faultsOf(each, path));
    }
    default:
      return [wrongShape(path, issue)];
  }
}

function leafFault(path: KeyPath, params: Record<string, unknown> | undefined): Fault {
  const { reason, allowed, write, missing } = { ...NO_PROBLEM, ...params };
  if (!missing) return { path, at: 'value', reason, allowed, write: `Write ${write}` };
  const key = String(path.at(-1));
  const line = write.startsWith('"') ? `"${key}: ${write.slice(1)}` : `"${key}:" with ${write}`;
  const parent = path.at(-2);
  const where =
    parent === undefined ? '' : typeof parent === 'number' ? ' to that entry' : ` under "${parent}:"`;
  return { path, at: 'missing', reason, allowed, write: `Add ${line}${where}` };
}

const NO_PROBLEM: LeafProblem = {
  reason: 'is not right',
  allowed: 'another value',
  write: 'another value',
  missing: false,
};

function unknownKey(section: KeyPath, key: string): Fault {
  const path = [...section, key];
  const known = keysAt(setupSchema, section);
  const allowed = known.join(', ');
  const base = key.replace(/_sd$/, '');
  const nearest = nearestWord(base, known);
  const meant = nearest === undefined ? undefined : base === key ? nearest : `${nearest}_sd`;
  const elsewhere = meant === undefined ? sectionsWith(key) : [];
  const write =
    meant !== undefined
      ? `Write "${meant}"`
      : elsewhere.length > 0
        ? `Move it under ${elsewhere.map((name) => `"${name}:"`).join(' or ')}`
        : 'Remove it';
  const fault: Fault = { path, at: 'key', reason: `there is no key "${key}" here`, allowed, write };
  return meant === undefined ? fault : { ...fault, meant: [...section, meant] };
}

/** The top sections that do have such a key. */
const sectionsWith = (key: string): readonly string[] =>
  keysAt(setupSchema, []).filter((section) => keysAt(setupSchema, [section]).includes(key));

function wrongShape(path: KeyPath, issue: Issue): Fault {
  const list = issue.code === 'invalid_type' && issue.expected === 'array';
  const keys = keysAt(setupSchema, path);
  const example = list
    ? 'Write each entry on a line of its own that begins with "- "'
    : 'Write its keys under it';
  return {
    path,
    at: 'value',
    reason: list ? 'has one value where a list belongs' : 'has one value or a list where keys belong',
    allowed: list ? 'a list of entries' : `a section with ${keys.join(', ')}`,
    write: example,
  };
}
