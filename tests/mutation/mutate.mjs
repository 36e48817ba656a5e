/**
 * Changes the source by small faults, one at a time, and says which of them no test notices:
 *
 *   npm run mutate -- sight                   a room
 *   npm run mutate -- numerics/root           a file of it, or the files whose names begin so
 *   npm run mutate -- flight/path arrow/lift  several
 *
 * A run of a whole room goes on from the last one: only what has changed since is tried again. The report for reading is
 * out/mutation/<room>.html. The tester is installed into this folder the first time.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import process from 'node:process';
import { fileURLToPath } from 'node:url';

const here = fileURLToPath(new URL('.', import.meta.url));
process.chdir(fileURLToPath(new URL('../..', import.meta.url)));

/** Beside its own unit tests, what else is quick and judges a room. */
const FURTHER = {
  numerics: ['tests/property/numerics.test.ts'],
  sight: [],
  arrow: ['tests/property/arrow.test.ts'],
  flight: [],
  calibration: [],
};

const pieces = process.argv.slice(2);
const rooms = [...new Set(pieces.map((piece) => piece.split('/')[0]))];
const unknown = rooms.filter((room) => !(room in FURTHER));
if (pieces.length === 0 || unknown.length > 0) {
  process.stderr.write(
    `Name what to change: ${Object.keys(FURTHER).join(', ')}, or a file such as numerics/root.\n`,
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

const filesOf = (piece) =>
  existsSync(`src/${piece}`) ? `src/${piece}/**/*.ts` : `src/${piece}${piece.endsWith('.ts') ? '' : '*.ts'}`;
const name = pieces.join('+').replaceAll('/', '.');
process.env['MUTATION_TESTS'] = rooms
  .flatMap((room) => [`tests/unit/${room}/**/*.test.ts`, ...FURTHER[room]])
  .join(',');

const results = await new Stryker({
  mutate: [...pieces.map(filesOf), '!src/**/*.d.ts'],
  testRunner: 'vitest',
  plugins: ['@stryker-mutator/vitest-runner'],
  vitest: { configFile: 'tests/mutation/vitest.config.ts', related: false },
  coverageAnalysis: 'perTest',
  // Words are judged by the tests of the doors that say them, and the names of kinds by the types.
  mutator: { excludedMutations: ['StringLiteral'] },
  concurrency: 1,
  // A busy machine is no test that fails: what never ends is stopped by how often it has gone round, not by the clock.
  timeoutMS: 60_000,
  timeoutFactor: 5,
  ignorePatterns: ['/.*', '/dist', '/out', '/examples', 'tests/page', 'tests/golden', 'tests/cli'],
  tempDirName: 'out/mutation/sandbox',
  incremental: true,
  incrementalFile: `out/mutation/${name}.incremental.json`,
  reporters: ['clear-text', 'html', 'json'],
  clearTextReporter: { allowColor: false, logTests: false, reportTests: false, allowEmojis: false },
  htmlReporter: { fileName: `out/mutation/${name}.html` },
  jsonReporter: { fileName: `out/mutation/${name}.json` },
  allowConsoleColors: false,
  allowEmpty: false,
  logLevel: 'warn',
}).runMutationTest();

const count = (...statuses) => results.filter(({ status }) => statuses.includes(status)).length;
const [killed, lived] = [count('Killed', 'Timeout'), count('Survived', 'NoCoverage')];
process.stdout.write(
  `${pieces.join(' ')}: ${killed} of ${killed + lived} killed, ${((100 * killed) / (killed + lived)).toFixed(1)} %` +
    ` (${count('Timeout')} by time, ${count('NoCoverage')} in lines that no test runs)\n`,
);
