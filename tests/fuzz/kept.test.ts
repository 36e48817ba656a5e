import { readdirSync, readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { readSetup } from '../../src/setup/read.ts';
import { openedAndAsked } from './opened-and-asked.ts';
import { readOrRefused } from './read-or-refused.ts';

/** Files that once broke something: what was wrong stands in the name. `npm run fuzz` says where to keep a new one. */
const files = readdirSync('tests/fuzz/kept').filter((name) => name.endsWith('.yaml'));

describe('what once broke the program', () => {
  it('is kept', () => expect(files.length).toBeGreaterThan(0));

  it.each(files)('%s is read or refused, and answered', async (name) => {
    const text = readFileSync(`tests/fuzz/kept/${name}`, 'utf8');
    readOrRefused(text, readSetup);
    expect(await openedAndAsked(text, 'all')).toBeGreaterThanOrEqual(0);
  });
});
