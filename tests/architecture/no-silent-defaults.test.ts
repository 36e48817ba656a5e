import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

/**
 * A number that stands in for one that is missing: what is missing must be an error (`at` of src/numerics/at.ts), a value that
 * says so, or a default with a name and a reason.
 */
const SILENT_DEFAULT = /\?\?=?\s*-?(?:0|1|(?:Number\.)?NaN)(?![\w.])/g;

/** Files and folders that still have some: an entry is only ever removed, and must be when it has none left. */
const pending: readonly string[] = [];

const countOf = (text: string): number => [...text.matchAll(SILENT_DEFAULT)].length;
const offences = readdirSync('src', { encoding: 'utf8', recursive: true })
  .filter((path) => path.endsWith('.ts'))
  .map((path) => join('src', path))
  .map((path) => ({ path, count: countOf(readFileSync(path, 'utf8')) }))
  .filter(({ count }) => count > 0);

it('knows a silent default when it sees one', () => {
  for (const line of ['a[i] ?? 0;', '(b?.c ?? Number.NaN)', 'd ??\n  NaN', 'e ?? -1)', 'f ??= 1;'])
    expect(countOf(line), line).toBe(1);
  for (const line of ['a ?? 0.5', 'b ?? 10', 'c ?? NANOMETRE', 'd ?? null', 'e ?? -Infinity', 'f || 1'])
    expect(countOf(line), line).toBe(0);
});

it('no number stands in silently for a missing one', () =>
  expect(offences.filter(({ path }) => !pending.some((entry) => path.startsWith(entry)))).toEqual([]));

it.each(pending)('%s still has some; else remove it from the list', (entry) =>
  expect(offences.some(({ path }) => path.startsWith(entry))).toBe(true),
);
