import { readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { filesIn } from './source-files.ts';

const tests = filesIn('tests').filter((path) => path.endsWith('.test.ts'));
const found = (pattern: RegExp): readonly string[] =>
  tests.flatMap((path) =>
    [...readFileSync(path, 'utf8').matchAll(pattern)].map(
      ([text]) => `${path}: ${text.replace(/\s+/g, ' ')}`,
    ),
  );

it('a tolerance on a difference says its unit or its reason beside it', () => {
  // A difference below a bare number that is not zero, as far as the end of the statement.
  const bare = /Math\.abs\([^;]*?\.toBeLessThan(OrEqual)?\(\s*(?!0\s*\))[\d.e_+-]+\s*,?\s*\)/g;
  expect(found(bare)).toEqual([]);
});

it('nearness says to how many digits', () => {
  const bare = /\.toBeCloseTo\(([^,()]|\([^()]*\))*\)/g;
  expect(found(bare)).toEqual([]);
});
