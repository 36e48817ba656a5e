import { execFileSync, spawnSync } from 'node:child_process';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const program = join(inject('dist'), 'main.js');
const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
afterAll(() => rmSync(folder, { recursive: true }));
const example = 'examples/mountain-hunt/setup.yaml';

const DATED = ['--date', '2026-01-02'];

/** Makes every thread say which it is, on standard error. */
const TELLING_THREADS = `data:text/javascript,${encodeURIComponent(
  "import { threadId } from 'node:worker_threads';import { writeSync } from 'node:fs';" +
    "if (threadId > 0) writeSync(2, 'thread ' + threadId + String.fromCharCode(10));",
)}`;

/** Says on standard error when a process looks at its standard input, which is nobody's terminal. */
const tellingInput = join(folder, 'telling-input.cjs');
writeFileSync(
  tellingInput,
  "const say = () => require('node:fs').writeSync(2, 'standard input opened\\n');" +
    "Object.defineProperty(process, 'stdin', { get() { say(); return {}; } });",
);

describe('the program as it is built', () => {
  // The build puts small stand-ins in the place of packages of which a document needs nothing or little.
  it.each(['tape', 'fit'])(
    'writes the PDF of %s that its sources write, to the last byte',
    async (question) => {
      const [asked, name] = [[question, example, ...DATED], join(folder, `${question}.pdf`)];
      const { files } = await atTerminal([...asked, '--out', name]);
      execFileSync(process.execPath, [program, ...asked, '--out', name]);
      expect(Buffer.compare(readFileSync(name), Buffer.from(files.get(name) ?? ''))).toBe(0);
    },
  );
  it('opens standard input for a command that asks, and for no other', () => {
    const opened = (argv: readonly string[]): string =>
      spawnSync(process.execPath, ['--require', tellingInput, program, ...argv], {
        cwd: folder,
        encoding: 'utf8',
      }).stderr;
    const setup = join(process.cwd(), example);
    expect(opened(['marks', setup, '--from', '20yd', '--to', '20yd'])).toBe('');
    expect(opened(['new', 'asked.yaml'])).toBe('standard input opened\n');
  });
  it.runIf(existsSync('/dev/full'))('says in a line when the disk is full under its version', () => {
    const { status, stderr } = spawnSync(process.execPath, [program, '--version'], {
      encoding: 'utf8',
      stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'],
    });
    expect(stderr).toBe('The answer could not be printed: the disk is full.\n');
    expect(status).toBe(1);
  });
});

describe.each([
  ['nothing beside it', undefined],
  ['a package.json of modules beside it', 'module'],
] as const)('its one script, copied alone to a folder with blanks in its name, %s', (_, type) => {
  const alone = join(folder, `mein Bogen, ${type ?? 'alone'} – 弓`);
  mkdirSync(alone);
  if (type !== undefined) writeFileSync(join(alone, 'package.json'), JSON.stringify({ type }));
  copyFileSync(join(inject('dist'), 'cli', 'quillpath.js'), join(alone, 'quillpath.js'));
  copyFileSync(example, join(alone, 'bow.yaml'));
  const run = (argv: readonly string[]): string =>
    execFileSync(process.execPath, ['quillpath.js', ...argv], { cwd: alone, encoding: 'utf8' });

  it('prints the marks', async () => {
    const { out } = await atTerminal(['marks', example]);
    expect(run(['marks', 'bow.yaml'])).toBe(out);
  });
  it('writes a tape with its typeface', async () => {
    const { files } = await atTerminal(['tape', example, ...DATED, '--out', join(folder, 'tape.pdf')]);
    run(['tape', 'bow.yaml', ...DATED, '--out', 'tape.pdf']);
    expect(
      Buffer.compare(readFileSync(join(alone, 'tape.pdf')), Buffer.from([...files.values()][0] ?? '')),
    ).toBe(0);
  });
  it('puts threads to work', async () => {
    const asked = ['--uncalibrated', '--arrows', '60', '--every', '50yd', '--csv'];
    const { out } = await atTerminal(['scatter', example, ...asked]);
    const { stdout, stderr } = spawnSync(
      process.execPath,
      ['--import', TELLING_THREADS, 'quillpath.js', 'scatter', 'bow.yaml', ...asked],
      { cwd: alone, encoding: 'utf8' },
    );
    expect(stdout).toBe(out);
    expect(stderr).toMatch(/thread 1\n/);
  });
  it('tells its version and its errors', () => {
    const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
    expect(run(['--version'])).toBe(`${version}\n`);
    const { status, stderr } = spawnSync(process.execPath, ['quillpath.js', 'marks', 'none.yaml'], {
      cwd: alone,
      encoding: 'utf8',
    });
    expect(stderr).toContain('none.yaml');
    expect(status).toBe(2);
  });
  it('leaves nothing else there', () =>
    expect(readdirSync(alone).toSorted()).toEqual(
      ['bow.yaml', 'quillpath.js', 'tape.pdf', ...(type === undefined ? [] : ['package.json'])].toSorted(),
    ));
});
