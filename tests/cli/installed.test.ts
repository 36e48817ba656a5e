import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import process from 'node:process';
import { build } from 'esbuild';
import ts from 'typescript';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

const dist = inject('dist');
/** A folder as an archer may have it, with the package installed in it from its archive and nothing else. */
const folder = mkdtempSync(join(tmpdir(), 'my quiver é '));
afterAll(() => rmSync(folder, { recursive: true }));
const archive = join(folder, 'quillpath.tgz');
const installed = join(folder, 'node_modules/quillpath');

/** No home, an address where nobody answers, and an empty cache. */
const ALONE = {
  PATH: process.env['PATH'],
  HOME: join(folder, 'no such home'),
  npm_config_cache: join(folder, 'cache'),
  npm_config_registry: 'http://127.0.0.1:9',
  npm_config_update_notifier: 'false',
};
/** What a program of npm's prints; it fails the test unless it succeeds. */
const npm = (program: string, ...argv: readonly string[]) =>
  execFileSync(program, argv, {
    cwd: folder,
    env: ALONE,
    encoding: 'utf8',
    stdio: ['ignore', 'pipe', 'pipe'],
  });

beforeAll(() => {
  const packed = execFileSync(
    'npm',
    ['pack', '--ignore-scripts', '--offline', '--silent', '--pack-destination', folder],
    { encoding: 'utf8' },
  );
  cpSync(join(folder, packed.trim()), archive);
  rmSync(join(folder, packed.trim()));
  cpSync('examples', join(folder, 'examples'), { recursive: true });
});

describe('the package', () => {
  it('is installed without network, cache, home or scripts, and brings no other', () => {
    const { stdout, stderr, status } = spawnSync('npm', ['install', '--offline', archive], {
      cwd: folder,
      env: ALONE,
      encoding: 'utf8',
    });
    expect(stderr).toBe('');
    expect(status).toBe(0);
    expect(stdout).toContain('added 1 package');
    expect(readdirSync(join(folder, 'node_modules')).filter((name) => !name.startsWith('.'))).toEqual([
      'quillpath',
    ]);
    const { scripts = {} }: { readonly scripts?: Readonly<Record<string, string>> } = JSON.parse(
      readFileSync(join(installed, 'package.json'), 'utf8'),
    );
    // What npm runs, or asks about, when a package is installed.
    for (const name of ['preinstall', 'install', 'postinstall', 'prepare'])
      expect(scripts).not.toHaveProperty(name);
  });
  const setup = 'examples/mountain-hunt/setup.yaml';
  it.each([
    ['marks', setup, '--from', '20yd', '--every', '40yd', '--csv'],
    // Computed in threads, a file of its own.
    ['vary', setup, '--over', 'arrow.mass=450gr:480gr:10gr', '--show', 'drop', '--csv', '--uncalibrated'],
  ])('answers %s as it does where it was built', (...argv) => {
    const there = execFileSync(process.execPath, [join(dist, 'main.js'), ...argv], { encoding: 'utf8' });
    expect(npm('npx', '--no-install', 'quillpath', ...argv)).toBe(there);
  });
  it('prints a tape, with the typeface that it brings', () => {
    npm('npx', '--no-install', 'quillpath', 'tape', setup, '--out', 'my tape.pdf');
    expect(readFileSync(join(folder, 'my tape.pdf')).subarray(0, 5).toString()).toBe('%PDF-');
  });
  it('runs by npx from its archive in an empty folder', () => {
    const empty = join(folder, 'an empty folder');
    mkdirSync(empty);
    const argv = ['--offline', '--yes', '--package', archive, 'quillpath', 'new', 'my bow.yaml'];
    execFileSync('npx', argv, { cwd: empty, env: ALONE });
    expect(readdirSync(empty)).toEqual(['my bow.yaml']);
  });
  it('puts the command and its manual page where a shell and man look, when it is installed for all', () => {
    npm('npm', 'install', '--global', '--prefix', join(folder, 'all'), '--offline', archive);
    const command = join(folder, 'all/bin/quillpath');
    const { version }: { readonly version: string } = JSON.parse(readFileSync('package.json', 'utf8'));
    expect(npm(command, '--version').trim()).toBe(version);
    expect(readFileSync(join(folder, 'all/share/man/man1/quillpath.1'), 'utf8')).toContain(
      `quillpath ${version}`,
    );
  });
  it('is bundled into a program of others without losing anything', async () => {
    const script = `import { readFileSync } from 'node:fs';
      import { ask, openSetup } from 'quillpath';
      const setup = openSetup(readFileSync('examples/mountain-hunt/setup.yaml', 'utf8'), 'setup.yaml');
      const { data } = await ask('marks', setup, { from: '20 yd', to: '60 yd', every: '20 yd' });
      process.stdout.write(JSON.stringify(data.rows));`;
    writeFileSync(join(folder, 'plain.mjs'), script);
    await build({
      entryPoints: [join(folder, 'plain.mjs')],
      outfile: join(folder, 'bundled.mjs'),
      bundle: true,
      format: 'esm',
      platform: 'node',
      treeShaking: true,
    });
    const [plain, bundled] = ['plain.mjs', 'bundled.mjs'].map((name) => npm(process.execPath, name));
    expect(JSON.parse(plain ?? '')).toHaveLength(3);
    expect(bundled).toBe(plain);
  });
});

describe('the declarations', () => {
  const types = join(folder, 'types');
  beforeAll(() => {
    const script =
      "import { writeTypes } from './build/types.mjs'; process.exitCode = writeTypes(process.cwd(), process.argv[1]) ? 0 : 1;";
    execFileSync(process.execPath, ['--input-type=module', '-e', script, types], { cwd: resolve('.') });
    // The compiler reads every source file for it.
  }, 300_000);

  /** What the compiler has against a program that uses the package, every declaration checked, with no other package there. */
  function faultsOf(program: string): string {
    const path = join(folder, 'consumer.ts');
    writeFileSync(path, program);
    const options: ts.CompilerOptions = {
      strict: true,
      noEmit: true,
      skipLibCheck: false,
      target: ts.ScriptTarget.ES2023,
      lib: ['lib.es2023.d.ts'],
      module: ts.ModuleKind.NodeNext,
      types: [],
      paths: { quillpath: [join(types, 'quillpath.d.ts')] },
    };
    return ts
      .getPreEmitDiagnostics(ts.createProgram([path], options))
      .map(({ messageText }) => ts.flattenDiagnosticMessageText(messageText, '\n'))
      .join('\n');
  }
  const PROGRAM = `import { ask, openSetup, type OpenSetup, type Report, SetupError } from 'quillpath';
    const opened: OpenSetup = openSetup('', 'setup.yaml');
    const length: number = opened.setup.sight.peep_to_pin;
    export const answer: Promise<Report> = ask('marks', opened, { from: '20 yd', every: '5 yd' });
    export const faults = (error: unknown): number => (error instanceof SetupError ? error.problems.length : length);
  `;

  it('need no other package', () => expect(faultsOf(PROGRAM)).toBe(''));
  it('know every option, and the setup to its last key', () => {
    const wrong = PROGRAM.replace("every: '5 yd'", "evry: '5 yd'").replace('peep_to_pin', 'peep_to_sight');
    expect(faultsOf(wrong)).toMatch(/peep_to_sight[\s\S]*evry/);
  });
});
