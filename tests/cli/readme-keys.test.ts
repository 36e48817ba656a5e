import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEFAULT_WORDS, DEFAULTS } from '../../src/setup/assemble/defaults.ts';
import type { KeyPath } from '../../src/setup/key-path.ts';
import { keysAt } from '../../src/setup/schema/known-keys.ts';
import { LIMITS } from '../../src/setup/schema/limits.ts';
import { setupSchema } from '../../src/setup/schema/schema.ts';

/** A build may hold any key of the arrow and the launch; the README lists those once. */
const ONCE = ['builds.arrow', 'builds.launch'];

/** Every key of the setup file with the sections above it, list positions left out. */
function keysUnder(path: KeyPath): readonly string[] {
  return keysAt(setupSchema, path).flatMap((key) => {
    const here = [...path, key];
    const name = here.filter((step) => typeof step === 'string').join('.');
    return ONCE.includes(name) ? [name] : [name, ...keysUnder(here), ...keysUnder([...here, 0])];
  });
}

/** The cells of the README's tables by the key in their first one. */
const rows = new Map(
  readFileSync('README.md', 'utf8')
    .split('\n')
    .flatMap((line): [string, readonly string[]][] => {
      const [, key, ...cells] = line.split('|').map((cell) => cell.trim());
      return key !== undefined && /^`[\w.]+`$/.test(key) ? [[key.slice(1, -1), cells]] : [];
    }),
);

const keys = keysUnder([]);

describe('the README lists the setup file', () => {
  it('of more than a hundred keys', () => expect(keys.length).toBeGreaterThan(100));
  it.each(keys)('%s, with what it is', (key) => expect(rows.get(key)?.[2]).toMatch(/\w/));

  it.each(Object.entries(LIMITS))('%s, with its unit and limits', (key, limit) => {
    const unit = limit.unit === '1' ? ('whole' in limit ? 'whole number' : 'number') : limit.unit;
    const said = (rows.get(key)?.[0] ?? '').replace(/(?<=\d) (?=\d{3})/g, '');
    expect(said).toBe(`${unit}, ${limit.min} to ${limit.max}`);
  });

  it.each([
    ...Object.entries(DEFAULTS).map(([key, { text }]) => [key, text] as const),
    ...Object.entries(DEFAULT_WORDS),
  ])('%s, with its default %s', (key, text) => expect(rows.get(key)).toContain(text));
});
