import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join, normalize } from 'node:path';
import ts from 'typescript';
import { expect, it } from 'vitest';

/** What each room may import besides itself: earlier rooms and packages. DEVELOPERS.md says why. */
const domain = [
  'numerics',
  'quantities',
  'atmosphere',
  'arrow',
  'bow',
  'flight',
  'sight',
  'calibration',
  'advice',
];
const upTo = (room: string) => domain.slice(0, domain.indexOf(room));
const mayImport: Record<string, readonly string[]> = {
  numerics: ['odex'],
  quantities: ['numerics', 'mathjs'],
  ...Object.fromEntries(domain.slice(2).map((room) => [room, upTo(room)])),
  setup: [...upTo('advice'), 'zod', 'yaml'],
  documents: [...domain, 'pdfkit'],
  reports: [...domain, 'setup', 'documents', 'cli'],
  cli: [...domain, 'setup', 'documents', 'reports', 'commander', 'node:*'],
};
/** Packages that only one file may see. */
const onlyIn: Record<string, string> = {
  odex: 'src/numerics/ode.ts',
  pdfkit: 'src/documents/render/pdf.ts',
  'node:process': 'src/cli/main.ts',
};

const roomOf = (path: string) => path.split('/')[1] ?? '';
const packageOf = (name: string) => (name.startsWith('node:') ? name : (name.split('/')[0] ?? name));
const files = readdirSync('src', { encoding: 'utf8', recursive: true })
  .filter((path) => path.endsWith('.ts') && !path.endsWith('.d.ts'))
  .map((path) => join('src', path));
const importsOf = (path: string) =>
  ts.preProcessFile(readFileSync(path, 'utf8')).importedFiles.map(({ fileName }) => fileName);

it('sees the whole tree', () => {
  expect(files.length).toBeGreaterThan(20);
  expect(new Set(files.map(roomOf))).toEqual(new Set(Object.keys(mayImport)));
});

it.each(files)('%s imports only what its room may', (path) => {
  const imported = importsOf(path).map((name) =>
    name.startsWith('.') ? roomOf(normalize(join(dirname(path), name))) : packageOf(name),
  );
  const allowed = [roomOf(path), ...(mayImport[roomOf(path)] ?? [])];
  const mayUse = (name: string) =>
    allowed.includes(name) || (name.startsWith('node:') && allowed.includes('node:*'));
  expect(imported.filter((name) => !mayUse(name))).toEqual([]);
});

it.each(Object.entries(onlyIn))('%s is seen by %s alone', (name, only) => {
  const users = files.filter((path) => importsOf(path).some((imported) => packageOf(imported) === name));
  expect(users.filter((path) => path !== only)).toEqual([]);
});

it.each(files)('%s is at most 300 lines', (path) => {
  expect(readFileSync(path, 'utf8').split('\n').length).toBeLessThanOrEqual(301);
});

it.each(files)('%s has a name that says what it holds', (path) => {
  expect(path).toMatch(/\/[a-z0-9]+(-[a-z0-9]+)*\.ts$/);
  expect(path).not.toMatch(/\/(utils?|helpers?|common|types|index|misc)\.ts$/);
});
