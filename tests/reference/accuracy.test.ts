import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { accuracyPage, withKinds } from './accuracy-page.ts';
import { allClaims } from './all-claims.ts';

const claims = await allClaims();

it('reference/ACCURACY.md shows every claim as it is computed now (npm run accuracy)', () => {
  expect(readFileSync('reference/ACCURACY.md', 'utf8')).toBe(accuracyPage(claims));
});

it('the README shows the kinds of truth as they are computed now (npm run accuracy)', () => {
  const readme = readFileSync('README.md', 'utf8');
  expect(readme).toBe(withKinds(readme, claims));
});
