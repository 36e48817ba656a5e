import type * as z from 'zod/mini';
import type { Fault } from '../checks/fault.ts';
import { notPairs } from '../checks/not-pairs.ts';
import { type KeyPath, valueAt } from '../key-path.ts';
import { holdsSingleValues, keysAt } from './known-keys.ts';
import type { LeafProblem } from './leaf.ts';
import { setupSchema } from './schema.ts';
import { unknownKey } from './unknown-key.ts';

type Issue = z.core.$ZodIssue;

/** What the schema objects to, in the archer's words. */
export function schemaFaults(issues: readonly Issue[], root: unknown): readonly Fault[] {
  const faults: Fault[] = [];
  for (const issue of issues) {
    const isUnread = faults.length > MOST_READ && issue.code === 'unrecognized_keys';
    faults.push(...(isUnread ? strangers(issue) : faultsOf(issue, [], root)));
  }
  return faults;
}

/** Behind so many faults nobody reads what a key was meant to be, and looking that up takes long. */
const MOST_READ = 200;

const strangers = ({
  path,
  keys,
}: Extract<Issue, { readonly code: 'unrecognized_keys' }>): readonly Fault[] =>
  keys.map((key) => ({
    path: [...path.map((step) => (typeof step === 'number' ? step : String(step))), key],
    at: 'key',
    reason: `there is no key "${key}" here`,
    allowed: 'the keys of the section',
    write: 'Remove it',
  }));

function faultsOf(issue: Issue, prefix: KeyPath, root: unknown): readonly Fault[] {
  const path: KeyPath = [
    ...prefix,
    ...issue.path.map((step) => (typeof step === 'number' ? step : String(step))),
  ];
  switch (issue.code) {
    case 'custom':
      return [leafFault(path, issue.params)];
    case 'unrecognized_keys':
      return issue.keys.map((key) => unknownKey(path, key, root));
    case 'invalid_union': {
      // the only union is a number or a table; the table's own faults matter when a list was written
      const [table = [], number = []] = issue.errors;
      const branch = table.some(({ code, path: at }) => code === 'invalid_type' && at.length === 0)
        ? number
        : table;
      return branch.flatMap((each) => faultsOf(each, path, root));
    }
    case 'too_small':
      return [emptyList(path)];
    default:
      return [wrongShape(path, issue, root)];
  }
}

function leafFault(path: KeyPath, params: Record<string, unknown> | undefined): Fault {
  const { reason, allowed, write, missing } = { ...NO_PROBLEM, ...params };
  if (!missing) return { path, at: 'value', reason, allowed, write: `Write ${write}` };
  const key = String(path.at(-1));
  // What may be written besides stands after the place.
  const [, value, besides = ''] = /^"([^"]*)"(.*)$/.exec(write) ?? [];
  const line = value === undefined ? `"${key}:" with ${write}` : `"${key}: ${value}"`;
  return { path, at: 'missing', reason, allowed, write: `Add ${line}${placeOf(path.at(-2))}${besides}` };
}

/** Where to add a key: under its section, in its entry of a list, or at the top of the file. */
function placeOf(parent: string | number | undefined): string {
  if (parent === undefined) return '';
  return typeof parent === 'number' ? ' to that entry' : ` under "${parent}:"`;
}

const NO_PROBLEM: LeafProblem = {
  reason: 'is not right',
  allowed: 'another value',
  write: 'another value',
  missing: false,
};

/** Of a list of single values that holds none. */
const emptyList = (path: KeyPath): Fault => ({
  path,
  at: 'value',
  reason: 'is an empty list',
  allowed: 'a list of at least one value',
  write: `Write one value for each arrow or reading, ${EXAMPLE_OF_A_LIST}`,
});

const EXAMPLE_OF_A_LIST = '"[1.5 in, 2 in]"';

/** Of a single value where a list of single values belongs. */
function loneValue(path: KeyPath, root: unknown): Fault {
  const found = valueAt(root, path);
  return {
    path,
    at: 'value',
    reason: 'has one value where a list belongs',
    allowed: 'a list of values between brackets',
    write: listMeant(path, found),
  };
}

/** A single value as a list; of pins their count alone says nothing of where they stand. */
function listMeant(path: KeyPath, found: unknown): string {
  if (path.at(-1) === 'pins') return 'Write "[20 yd, 30 yd, 40 yd]", the ranges that your pins are set for';
  return `Write ${typeof found === 'string' ? `"[${found}]"` : EXAMPLE_OF_A_LIST}`;
}

function wrongShape(path: KeyPath, issue: Issue, root: unknown): Fault {
  if (path.includes('hits')) return notPairs(path);
  const list = issue.code === 'invalid_type' && issue.expected === 'array';
  if (list && holdsSingleValues(setupSchema, path)) return loneValue(path, root);
  const keys = keysAt(setupSchema, path);
  const example = list
    ? 'Start each entry on its own line with "- "'
    : 'Write its keys on the lines below it';
  return {
    path,
    at: 'value',
    reason: list ? 'has a single value where a list belongs' : 'has a value or a list where keys belong',
    allowed: list ? 'a list of entries' : `a section with ${keys.join(', ')}`,
    write: example,
  };
}
