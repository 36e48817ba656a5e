import { expect, it } from 'vitest';
import { COMPOUND_VIRTUAL_MASS } from '../../../src/bow/energy.ts';
import { parseQuantity } from '../../../src/quantities/parse.ts';
import { DEFAULT_WORDS, DEFAULTS } from '../../../src/setup/assemble/defaults.ts';
import { setupKeys, whatIs } from '../../../src/setup/keys.ts';
import { LIMITS } from '../../../src/setup/schema/limits.ts';

const keys = setupKeys();
const keyAt = (path: string) => keys.find((key) => key.path === path);

it('there are more than a hundred keys, each once', () => {
  expect(keys.length).toBeGreaterThan(100);
  expect(new Set(keys.map(({ path }) => path)).size).toBe(keys.length);
});

it.each(keys.map(({ path, what }) => [path, what]))('%s says what it is: %s', (_, what) => {
  // a fragment that fits behind a dash, into a table and under a field of a form
  expect(what).toMatch(/^[a-zR].*\w[)`]?$/);
});

it.each(Object.entries(LIMITS))('%s is listed with its limits', (path, limit) => {
  expect(keyAt(path)?.limit).toBe(limit);
});

/** Defaults of the fit that are not keys of the file. */
const NO_KEYS = /_sd$|arrow_spread$/;

it.each([
  ...Object.entries(DEFAULTS).map(([path, { text }]) => [path, text] as const),
  ...Object.entries(DEFAULT_WORDS),
])('%s is listed with its default %s', (path, text) => {
  if (!NO_KEYS.test(path)) expect(keyAt(path)?.fallback).toBe(text);
  else expect(keyAt(path)).toBeUndefined();
});

it('the virtual mass falls back to what the calibration takes', () => {
  const [value = '', share = ''] = (keyAt('bow.virtual_mass')?.fallback ?? '').split(', ± ');
  // to the 85 gr and 45 % of the prior, as written out
  expect(parseQuantity(value, 'mass')).toBeCloseTo(COMPOUND_VIRTUAL_MASS.value, 12);
  expect(parseQuantity(share, 'ratio')).toBeCloseTo(COMPOUND_VIRTUAL_MASS.logSd, 12);
});

it('what the schema needs is needed, and the rest is not', () => {
  expect(keys.filter(({ path, needed }) => needed && !path.includes('.')).map(({ path }) => path)).toEqual([
    'bow',
    'arrow',
    'launch',
    'sight',
  ]);
  expect(keyAt('launch.speed')?.needed).toBe(true);
  expect(keyAt('launch.measured_at')?.needed).toBe(false);
});

it('a build lists the keys of the arrow and the launch once, by name', () => {
  expect(keyAt('builds.arrow')?.keysOf).toBe('arrow');
  expect(keys.filter(({ path }) => path.startsWith('builds.arrow.'))).toEqual([]);
});

it('a key that does not exist is not explained', () => {
  expect(whatIs('arrow.diameter')).toBe('outside diameter of the shaft');
  expect(() => whatIs('arrow.colour')).toThrow('no key arrow.colour');
});
