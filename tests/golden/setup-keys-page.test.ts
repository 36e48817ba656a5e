import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { misplacedKeys, setupKeysPage } from './setup-keys-page.ts';

const PAGE = 'examples/README.md';

/** `npm run golden` writes the page anew, to be read as a diff before it is committed. */
if (process.env['REWRITE'] === 'yes') writeFileSync(PAGE, setupKeysPage());

it('examples/README.md lists the keys of the setup file as the schema has them', () => {
  expect(readFileSync(PAGE, 'utf8')).toBe(setupKeysPage());
});

it('every key at the top of the file stands under one heading', () => expect(misplacedKeys()).toEqual([]));
