import { expect, it } from 'vitest';
import { circles } from './circles.ts';
import { filesIn, importsOf, roomOf } from './source-files.ts';

const NUMBERS = ['numerics', 'quantities'];
const FLYING = [...NUMBERS, 'atmosphere', 'arrow', 'flight'];
const CALIBRATED = [...FLYING, 'bow', 'sight', 'calibration'];
/** What a command line, a page and a script may use: they ask, show and print, and compute nothing. */
const DOOR = ['reports', 'setup', 'documents', 'quantities'];

/** What each room may import besides itself: other rooms and packages. DEVELOPERS.md says why. */
const mayImport: Readonly<Record<string, readonly string[]>> = {
  numerics: ['odex'],
  quantities: ['numerics', 'mathjs'],
  documents: [...NUMBERS, 'pdfkit'],
  atmosphere: NUMBERS,
  arrow: [...NUMBERS, 'atmosphere'],
  bow: NUMBERS,
  flight: FLYING,
  sight: FLYING,
  calibration: CALIBRATED,
  setup: [...CALIBRATED, 'zod', 'yaml'],
  advice: CALIBRATED,
  reports: [...CALIBRATED, 'documents', 'setup', 'advice'],
  'quillpath.ts': DOOR,
  page: [...DOOR, 'quillpath.ts', 'examples/*'],
  cli: [...DOOR, 'commander', 'node:*', 'package.json'],
};

/** Any room may know these classes, to tell one failure from another. */
const errorClasses = ['src/numerics/numerical-error.ts'];

/** Packages that only one file may see. */
const onlyIn: Readonly<Record<string, readonly string[]>> = {
  odex: ['src/numerics/ode.ts'],
  pdfkit: ['src/documents/render/pdf.ts'],
  'package.json': ['src/cli/version.ts'],
  // The program, its start, the Ctrl-C that ends its threads, and the process that a half-written file belongs to.
  'node:process': [
    'src/cli/main.ts',
    'src/cli/start/launcher.ts',
    'src/cli/start/role.ts',
    'src/cli/world/interruptible.ts',
    'src/cli/world/whole-file.ts',
  ],
};

/**
 * Pairs of rooms that do not keep the rule yet. A pair that keeps it fails the test too, until it is taken off this list,
 * so that the list can only shrink.
 */
const pending: readonly string[] = [];

const files = filesIn('src');
const graph = new Map(files.map((path) => [path, importsOf(path)]));
/** The room of a file, or the package itself. */
const sourceOf = (imported: string): string => (imported.startsWith('src/') ? roomOf(imported) : imported);

const allows = (room: string, imported: string): boolean => {
  const name = sourceOf(imported);
  const allowed = [room, ...(mayImport[room] ?? [])];
  return (
    allowed.includes(name) ||
    errorClasses.includes(imported) ||
    (name.startsWith('node:') && allowed.includes('node:*')) ||
    (name.startsWith('examples/') && allowed.includes('examples/*'))
  );
};

it('sees the whole tree', () => {
  expect(new Set(files.map(roomOf))).toEqual(new Set(Object.keys(mayImport)));
  expect([...graph.values()].flat().length).toBeGreaterThan(files.length);
});

it('every room imports only what it may', () => {
  const offences = [...graph].flatMap(([path, imported]) =>
    imported
      .filter((name) => !allows(roomOf(path), name))
      .map((name) => ({
        rooms: `${roomOf(path)} imports ${sourceOf(name)}`,
        files: `${path} imports ${name}`,
      })),
  );
  expect({
    offences: offences.filter(({ rooms }) => !pending.includes(rooms)).map((offence) => offence.files),
    mended: pending.filter((pair) => offences.every(({ rooms }) => rooms !== pair)),
  }).toEqual({ offences: [], mended: [] });
});

it('some packages are seen by one file or two alone', () => {
  const offences = [...graph].flatMap(([path, imported]) =>
    imported
      .filter((name) => (onlyIn[name] ?? [path]).every((only) => only !== path))
      .map((name) => `${path} imports ${name}`),
  );
  expect(offences).toEqual([]);
});

it('no imports run in a circle, types included', () => {
  expect(circles(graph)).toEqual([]);
});

it('a circle is found, and what only leads to it or comes from it is not', () => {
  const known = new Map([
    ['before', ['a']],
    ['a', ['b']],
    ['b', ['c', 'after']],
    ['c', ['a']],
    ['after', []],
    ['itself', ['itself', 'after']],
  ]);
  expect(circles(known)).toEqual([['a', 'b', 'c'], ['itself']]);
});
