import { spawn, spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';

/** Faults of disks, folders, pipes and people, on systems with the tools that make them. */

const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const example = join(process.cwd(), 'examples/mountain-hunt/setup.yaml');
const isUnix = process.platform !== 'win32';
const program = join(inject('dist'), 'main.js');
/** Runs a line of shell in the folder, with the program and the example as $1 and $2 of `quillpath`. */
const shell = (line: string, ...argv: string[]) =>
  spawnSync('bash', ['-c', line, process.execPath, program, example, ...argv], {
    cwd: folder,
    encoding: 'utf8',
    timeout: 60_000,
  });
const hasBash = isUnix && spawnSync('bash', ['-c', 'true']).status === 0;
const files = (): readonly string[] => readdirSync(folder);

describe.runIf(hasBash)('a disk that takes no more', () => {
  it.runIf(existsSync('/dev/full'))('because it is full is told with what to do', () => {
    symlinkSync('/dev/full', join(folder, 'full.svg'));
    const { status, stderr } = shell('"$0" "$1" tape "$2" --out full.svg');
    expect(stderr).toBe('full.svg: the disk is full: make room, or choose a place on another disk.\n');
    expect(status).toBe(1);
  });
  it.each(['svg', 'pdf'])('because the %s would be too large is told, and nothing is left', (kind) => {
    const { status, stderr } = shell(`ulimit -f 4; trap '' XFSZ; "$0" "$1" tape "$2" --out large.${kind}`);
    expect(stderr).toMatch(/^large\.\w+: the file would be larger than is allowed there: choose a place/);
    expect(status).toBe(1);
    expect(files().filter((name) => /large|part$/.test(name))).toEqual([]);
  });
});

describe('a program of which a file is missing', () => {
  const broken = join(folder, 'broken');
  cpSync(inject('dist'), broken, { recursive: true });
  const words = readdirSync(join(broken, 'cli')).filter((name) => name.startsWith('report-error'));
  for (const name of words) rmSync(join(broken, 'cli', name));
  it.runIf(words.length > 0)('says so in one line', () => {
    const { status, stderr } = spawnSync(
      process.execPath,
      [join(broken, 'main.js'), 'check', join(folder, 'none.yaml')],
      { encoding: 'utf8' },
    );
    expect(stderr).toMatch(/^The program cannot load its own files: .* Install it again\.\n$/);
    expect(status).toBe(1);
  });
});

describe.runIf(hasBash)('what one user may not', () => {
  const isRoot = process.getuid?.() === 0;
  /** Nobody, for an administrator may do everything. */
  const nobody = isRoot ? ['setpriv', '--reuid=65534', '--regid=65534', '--clear-groups'] : [];
  const isAble = !isRoot || spawnSync('setpriv', ['--reuid=65534', '--clear-groups', 'true']).status === 0;
  const place = join(folder, 'theirs');
  const as = (...argv: string[]) => {
    const [command = process.execPath, ...rest] = [...nobody, process.execPath, join(place, 'dist/main.js')];
    return spawnSync(command, [...rest, ...argv], { cwd: place, encoding: 'utf8', timeout: 30_000 });
  };
  beforeAll(() => {
    mkdirSync(place);
    // The test's own folder is open to its owner alone.
    chmodSync(folder, 0o755);
    cpSync(inject('dist'), join(place, 'dist'), { recursive: true });
    copyFileSync(example, join(place, 'bow.yaml'));
    copyFileSync(example, join(place, 'secret.yaml'));
    mkdirSync(join(place, 'closed'));
    writeFileSync(join(place, 'theirs.svg'), 'as it was');
    for (const [name, mode] of [
      ['bow.yaml', 0o644],
      ['secret.yaml', isRoot ? 0o600 : 0o000],
      ['closed', 0o555],
      ['theirs.svg', isRoot ? 0o644 : 0o444],
    ] as const)
      chmodSync(join(place, name), mode);
  });
  afterAll(() => chmodSync(join(place, 'closed'), 0o755));

  it.runIf(isAble)('to write in a folder', () => {
    for (const out of ['closed/t.svg', 'closed/new/t.svg']) {
      const { status, stderr } = as('tape', 'bow.yaml', '--out', out);
      expect(stderr).toBe(`${out}: no permission to write it: ask for permission, or choose another name.\n`);
      expect(status).toBe(1);
    }
    expect(readdirSync(join(place, 'closed'))).toEqual([]);
  });
  it.runIf(isAble)('to read a file', () => {
    const { status, stderr } = as('check', 'secret.yaml');
    expect(stderr).toContain('secret.yaml: no permission to read it. Ask for permission');
    expect(status).toBe(2);
  });
  it.runIf(isAble)('to change a file', () => {
    const { status, stderr } = as('tape', 'bow.yaml', '--out', 'theirs.svg');
    expect(stderr).toMatch(/no permission to write it|is protected against writing/);
    expect(status).toBeGreaterThan(0);
    expect(readFileSync(join(place, 'theirs.svg'), 'utf8')).toBe('as it was');
  });
});

describe('names that lead nowhere are told in words', () => {
  it.runIf(isUnix)('a link to itself, and a name that is too long', () => {
    symlinkSync('round.yaml', join(folder, 'round.yaml'));
    for (const [name, why] of [
      [join(folder, 'round.yaml'), 'the link points back to itself'],
      [join(folder, 'x'.repeat(300)), 'the name is too long'],
    ] as const) {
      const { status, stderr } = spawnSync(process.execPath, [program, 'check', name], { encoding: 'utf8' });
      // A word without an end is told by its beginning.
      const told = name.length <= 120 ? name : `${name.slice(0, 120)}…`;
      expect(stderr).toBe(`${told}: ${why}. Give the name of a setup file.\n`);
      expect(status).toBe(2);
    }
  });
});

describe.runIf(hasBash)('a pipe whose reader goes away', () => {
  it.each(['marks', 'fit', 'check', 'fly', '--help'])('ends %s without a word', (command) => {
    const argv = command === '--help' ? '' : '"$2"';
    const { stdout, stderr } = shell(
      `"$0" "$1" ${command} ${argv} | head -1 > /dev/null; echo "\${PIPESTATUS[0]}"`,
    );
    expect([stdout, stderr]).toEqual(['0\n', '']);
  });
  it('takes a document to nobody, which is told', () => {
    const { status, stderr } = shell(
      'mkfifo p.svg; (head -c 10 p.svg > /dev/null &); "$0" "$1" tape "$2" --out p.svg',
    );
    expect(stderr).toBe('p.svg: nobody reads what is written to it: choose another name.\n');
    expect(status).toBe(1);
  });
});

describe.runIf(isUnix)('a run that is ended from outside', () => {
  const out = join(folder, 'whole.svg');
  const started = (...argv: string[]) => {
    const child = spawn(process.execPath, [program, ...argv], { stdio: 'ignore' });
    const ended = new Promise<string | number | null>((resolve) =>
      child.on('exit', (code, signal) => resolve(signal ?? code)),
    );
    return { child, ended };
  };
  // Delays that fall while it loads, reads, computes and writes; how far it is by then differs from machine to machine.
  it.each(['SIGINT', 'SIGTERM', 'SIGKILL'] as const)(
    'by %s ends, and leaves a whole document or none',
    async (signal) => {
      for (const delay of [20, 60, 120, 200, 350, 600]) {
        rmSync(out, { force: true });
        const { child, ended } = started('tape', example, '--out', out);
        await new Promise((resolve) => setTimeout(resolve, delay));
        child.kill(signal);
        expect([signal, 0]).toContain(await ended);
        if (existsSync(out)) expect(readFileSync(out, 'utf8')).toMatch(/<\/svg>\s*$/);
      }
      expect(await started('tape', example, '--out', out).ended).toBe(0);
      expect(files().filter((name) => name.endsWith('.part'))).toEqual([]);
    },
  );
  it('two runs that write one document leave it whole', async () => {
    const runs = [started('tape', example, '--out', out), started('tape', example, '--out', out)];
    expect(await Promise.all(runs.map(({ ended }) => ended))).toEqual([0, 0]);
    expect(readFileSync(out, 'utf8').match(/<\/svg>/g)).toHaveLength(1);
    expect(files().filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});
