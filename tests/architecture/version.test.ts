import { readdirSync, readFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { filesIn } from './source-files.ts';

const { version }: { readonly version: string } = JSON.parse(readFileSync('package.json', 'utf8'));

it('the version is written in package.json and nowhere else', () => {
  const builders = readdirSync('build').map((name) => `build/${name}`);
  const scripts = [...readdirSync('.'), ...builders].filter((name) => /\.(mjs|md)$/.test(name));
  // Digits and points around it would make it another number.
  const said = new RegExp(String.raw`(?<![\d.])${version.replaceAll('.', String.raw`\.`)}(?![\d.])`);
  const places = [...filesIn('src'), ...filesIn('tests'), ...scripts];
  expect(places.filter((path) => said.test(readFileSync(path, 'utf8')))).toEqual([]);
  // npm copies it into the lock file, where it must not lag behind.
  const lock: { readonly version: string } = JSON.parse(readFileSync('package-lock.json', 'utf8'));
  expect(lock.version).toBe(version);
});
