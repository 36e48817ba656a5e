import { readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { accuracyTable, shownTable, withTable } from './accuracy-table.ts';
import { allClaims } from './all-claims.ts';

it('the README shows the accuracy table as the claims give it now', async () => {
  const table = accuracyTable(await allClaims());
  const readme = readFileSync('README.md', 'utf8');
  if (process.env['REWRITE'] === 'yes') writeFileSync('README.md', withTable(readme, table));
  expect(shownTable(readFileSync('README.md', 'utf8'))).toBe(table);
});
