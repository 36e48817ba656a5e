/**
 * Changes the source by small faults, one at a time, and says which of them no test notices:
 *
 *   npm run mutate -- sight                   a room
 *   npm run mutate -- numerics/root           a file, or the files whose names begin so
 *   npm run mutate -- flight/path arrow/lift  several
 *
 * File by file, since each is a matter of seconds to minutes: out/mutation/ROOM.FILE.html is the report for reading, and a run goes
 * on from the last one, so that only what has changed is tried again. The tester is installed into this folder the first time.
 */
import { spawnSync } from 'node:child_process';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { availableParallelism } from 'node:os';
import { join } from 'node:path';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
process.chdir(fileURLToPath(new URL('../..', import.meta.url)));

/** The rooms that are worth it, and what judges them quickly beside their own unit tests. */
const ROOMS = {
  numerics: ['tests/property/numerics.test.ts'],
  sight: [],
  arrow: ['tests/property/arrow.test.ts'],
  flight: [],
  calibration: [],
};

const filesIn = (folder, ending) =>
  readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .map((name) => join(folder, name))
    .filter((name) => name.endsWith(ending) && statSync(name).isFile())
    .toSorted();

/** The files that a piece names: all of a folder, or those that begin so. */
function filesOf(piece) {
  const isFolder = existsSync(`src/${piece}`) && statSync(`src/${piece}`).isDirectory();
  return filesIn(`src/${roomOf(piece)}`, '.ts').filter(
    (name) => !name.endsWith('.d.ts') && name.startsWith(`src/${piece}${isFolder ? '/' : ''}`),
  );
}
const roomOf = (piece) => piece.split('/')[0];

/** A file is judged by the tests of its room that import it or a neighbour that does; where there are none, by all of them. */
function testsOf(file) {
  const room = roomOf(file.slice('src/'.length));
  const imports = (from, what) => new RegExp(`/${what.split('/').at(-1)}'`).test(readFileSync(from, 'utf8'));
  const known = [file, ...filesIn(`src/${room}`, '.ts').filter((neighbour) => imports(neighbour, file))];
  const all = [...filesIn(`tests/unit/${room}`, '.test.ts'), ...ROOMS[room]];
  const own = all.filter((test) => known.some((one) => imports(test, one)));
  return own.length === 0 ? all : own;
}

const pieces = process.argv.slice(2);
const files = pieces.flatMap((piece) => (roomOf(piece) in ROOMS ? filesOf(piece) : []));
if (files.length === 0) {
  process.stderr.write(
    `Name what to change: ${Object.keys(ROOMS).join(', ')}, or a file such as numerics/root.\n`,
  );
  process.exit(2);
}
if (!existsSync(`${here}node_modules/@stryker-mutator/core`)) {
  const { status } = spawnSync(
    'npm',
    ['ci', '--ignore-scripts', '--no-audit', '--no-fund', '--prefix', here],
    {
      stdio: 'inherit',
    },
  );
  if (status !== 0) process.exit(1);
}
const { Stryker } = await import('@stryker-mutator/core');

const total = { killed: 0, lived: 0 };
for (const file of files) {
  const name = file.slice('src/'.length, -'.ts'.length).replaceAll('/', '.');
  process.env['MUTATION_TESTS'] = testsOf(file).join(',');
  const results = await new Stryker({
    mutate: [file],
    testRunner: 'vitest-loading',
    plugins: ['@stryker-mutator/vitest-runner', './tests/mutation/runner.mjs'],
    vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
    coverageAnalysis: 'perTest',
    // Words are judged by the tests of the doors that say them, and the names of kinds by the types.
    mutator: { excludedMutations: ['StringLiteral'] },
    concurrency: availableParallelism(),
    // A busy machine is no test that fails: what never ends is stopped by how often it has gone round, not by the clock.
    timeoutMS: 60_000,
    timeoutFactor: 5,
    ignorePatterns: ['/.*', '/dist', '/out', '/examples', 'tests/page', 'tests/golden', 'tests/cli'],
    tempDirName: 'out/mutation/sandbox',
    incremental: true,
    incrementalFile: `out/mutation/${name}.incremental.json`,
    reporters: ['clear-text', 'html'],
    clearTextReporter: {
      allowColor: false,
      allowEmojis: false,
      logTests: false,
      reportTests: false,
      reportScoreTable: false,
    },
    htmlReporter: { fileName: `out/mutation/${name}.html` },
    allowConsoleColors: false,
    allowEmpty: true,
    warnings: { slow: false },
    logLevel: 'warn',
  }).runMutationTest();
  const count = (...statuses) => results.filter(({ status }) => statuses.includes(status)).length;
  const [killed, lived] = [count('Killed', 'Timeout'), count('Survived', 'NoCoverage')];
  total.killed += killed;
  total.lived += lived;
  process.stdout.write(`${said(file, killed, lived)}\n`);
}
if (files.length > 1) process.stdout.write(`${said(pieces.join(' '), total.killed, total.lived)}\n`);

function said(what, killed, lived) {
  const all = killed + lived;
  return all === 0
    ? `${what}: nothing to change`
    : `${what}: ${killed} of ${all} killed, ${((100 * killed) / all).toFixed(1)} %`;
}
