import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { unreadable } from '../../../../src/setup/yaml/unreadable.ts';

it.each(readdirSync('examples').filter((name) => !name.endsWith('.md')))('%s is worth reading', (name) =>
  expect(unreadable(readFileSync(`examples/${name}/setup.yaml`, 'utf8'))).toBeNull(),
);

it('brackets that stand alone in notes are no levels, five hundred open ones are', () => {
  expect(unreadable('note: ":["\n'.repeat(500))).toBeNull();
  expect(unreadable('a: [1, 2]\n'.repeat(1000))).toBeNull();
  expect(unreadable('['.repeat(501))?.reason).toMatch(/too deep/);
});

it('so many signs are no setup', () => {
  expect(unreadable('[1,2],'.repeat(15_000))).toBeNull();
  expect(unreadable('[1,2],'.repeat(15_001))?.reason).toMatch(/has 60004 brackets, commas/);
});
