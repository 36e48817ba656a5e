import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, it } from 'vitest';

const folders = readdirSync('reference', { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);
const testText = readdirSync('tests/reference', { encoding: 'utf8', recursive: true })
  .filter((path) => path.endsWith('.ts'))
  .map((path) => readFileSync(join('tests/reference', path), 'utf8'))
  .join('\n');

const headings = ['What it is', 'Origin', 'How it got here', 'Columns', 'Known errata'];

it('there are folders of outside truth', () => expect(folders.length).toBeGreaterThan(0));

it.each(folders)('reference/%s says where it comes from', (folder) => {
  const source = readFileSync(join('reference', folder, 'SOURCE.md'), 'utf8');
  expect(headings.filter((heading) => !source.includes(`## ${heading}`))).toEqual([]);
});

it.each(folders)('reference/%s holds data and a test that reads it', (folder) => {
  expect(
    readdirSync(join('reference', folder)).filter((name) => name.endsWith('.csv')).length,
  ).toBeGreaterThan(0);
  expect(testText).toContain(`'${folder}'`);
});

it('every "@checked reference/..." in the code names a folder that is there', () => {
  const named = readdirSync('src', { encoding: 'utf8', recursive: true })
    .filter((path) => path.endsWith('.ts'))
    .flatMap((path) => [...readFileSync(join('src', path), 'utf8').matchAll(/@checked.*$/gm)])
    .flatMap(([line]) => [...line.matchAll(/reference\/([a-z0-9-]+)/g)].map(([, folder = '']) => folder));
  expect(named.length).toBeGreaterThan(20);
  expect(named.filter((folder) => !folders.includes(folder))).toEqual([]);
});

it('reference/README.md names every folder', () => {
  expect(existsSync('reference/README.md')).toBe(true);
  const index = readFileSync('reference/README.md', 'utf8');
  expect(folders.filter((folder) => !index.includes(folder))).toEqual([]);
});
