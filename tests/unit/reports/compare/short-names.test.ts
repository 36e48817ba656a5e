import { expect, it } from 'vitest';
import { shortNames } from '../../../../src/reports/compare/short-names.ts';

it('cuts what is too long and leaves the others', () => {
  const short = shortNames(['now', 'a heavy point and a light nock'], 12);
  expect(['now', 'a heavy point and a light nock'].map(short)).toEqual(['now', 'a heavy poi…']);
});

it('tells apart by their places what would be cut to one name', () => {
  const names = ['point of 100 gr and wraps', 'point of 100 gr, no wraps', 'point of 100 gr, lit nock'];
  const short = names.map(shortNames(names, 16));
  expect(new Set(short).size).toBe(3);
  expect(short).toEqual(['point of 100 gr…', 'point of 10… (2)', 'point of 10… (3)']);
  for (const name of short) expect(name.length).toBeLessThanOrEqual(16);
});
