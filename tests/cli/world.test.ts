import { spawnSync } from 'node:child_process';
import {
  chmodSync,
  copyFileSync,
  existsSync,
  linkSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  rmSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from 'node:fs';
import { hostname, tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';
import { receivedError, sentError } from '../../src/cli/world/sent-error.ts';
import { NumericalError } from '../../src/numerics/numerical-error.ts';
import { DomainError } from '../../src/quantities/domain-error.ts';

const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
const example = 'examples/mountain-hunt/setup.yaml';
const program = join(inject('dist'), 'main.js');
const place = join(folder, 'place');
mkdirSync(place);
afterAll(() => rmSync(folder, { recursive: true }));

const run = (...argv: string[]) =>
  spawnSync(process.execPath, [program, ...argv], { encoding: 'utf8', timeout: 10_000 });

describe('what the world outside does', () => {
  it.runIf(existsSync('/dev/full'))('a full disk under the answer is one line and exit code 1', () => {
    const { status, stderr } = spawnSync(process.execPath, [program, 'marks', example], {
      encoding: 'utf8',
      stdio: ['ignore', openSync('/dev/full', 'w'), 'pipe'],
    });
    expect(stderr).toBe('The answer could not be printed: the disk is full.\n');
    expect(status).toBe(1);
  });
  it('a setup file that comes late through a pipe that does not wait is read whole', () => {
    const late = `const { spawn } = require('node:child_process');
      const argv = [${JSON.stringify(program)}, 'check', '-'];
      const child = spawn(process.execPath, argv, { stdio: ['pipe', 'inherit', 'inherit'] });
      setTimeout(() => child.stdin.end(require('node:fs').readFileSync(${JSON.stringify(example)})), 500);
      child.on('exit', (code) => { process.exitCode = code; });`;
    const { status, stderr, stdout } = spawnSync(process.execPath, ['-e', late], { encoding: 'utf8' });
    expect(stderr).toBe('');
    expect(stdout).toContain('463');
    expect(status).toBe(0);
  });
  it('an error of a thread comes back as it was thrown', () => {
    for (const thrown of [
      new NumericalError('singular', 'no direction', 3),
      new NumericalError('not-converged', 'no pin', { at: 90, reason: 'no-pin' }),
      new DomainError('range', -1, 'above nought'),
    ])
      expect(receivedError(structuredClone(sentError(thrown)))).toStrictEqual(thrown);
  });
});

describe('a name that cannot be written', () => {
  const svg = (name: string) => run('tape', example, '--out', name);
  it('because it is a folder is refused', () => {
    const name = join(place, 'folder.svg');
    mkdirSync(name);
    const { status, stderr } = svg(name);
    expect(stderr).toBe(`${name}: is a folder. Name a file in it.\n`);
    expect(status).toBe(2);
  });
  it('because a folder in it is a file is refused', () => {
    const file = join(place, 'file');
    writeFileSync(file, '');
    const { status, stderr } = svg(join(file, 'tape.svg'));
    expect(stderr).toMatch(/is a file, not a folder\. Name/);
    expect(status).toBe(2);
  });
  it.runIf(existsSync('/proc/self'))('because its folder cannot be made is refused', () => {
    const { status, stderr } = svg('/proc/nowhere/tape.svg');
    expect(stderr).toMatch(/cannot be created\. Name|no permission to write/);
    expect(stderr).not.toContain('ENOENT');
    expect(status).toBeGreaterThan(0);
  });
  it('for a new setup file is refused likewise', () => {
    const { status, stderr } = run('new', place, '--force');
    expect(stderr).toMatch(/is a folder/);
    expect(status).toBe(2);
  });
  it('leaves nothing beside it', () => {
    expect(readdirSync(place).filter((name) => name.endsWith('.part'))).toEqual([]);
    expect(readdirSync(folder).filter((name) => name.endsWith('.part'))).toEqual([]);
  });
});

it('a link is written through and stays a link', () => {
  const [file, link] = [join(place, 'real.yaml'), join(place, 'link.yaml')];
  writeFileSync(file, 'old');
  symlinkSync('real.yaml', link);
  expect(run('new', link, '--force').status).toBe(0);
  expect(lstatSync(link).isSymbolicLink()).toBe(true);
  expect(readFileSync(file, 'utf8')).toContain('bow:');
});

describe('a document never takes the place of what it is made from', () => {
  const setup = join(place, 'mine.svg');
  it.each(['its own name', 'a link', 'a hard link', 'a longer way'])('by %s', (way) => {
    rmSync(setup, { force: true });
    copyFileSync(example, setup);
    const other = join(place, `${way}.svg`);
    if (way === 'a link') symlinkSync('mine.svg', other);
    if (way === 'a hard link') linkSync(setup, other);
    const names: Readonly<Record<string, string>> = {
      'its own name': setup,
      'a longer way': join(place, '..', 'place', 'mine.svg'),
    };
    const { status, stderr } = run('tape', setup, '--out', names[way] ?? other);
    expect(stderr).toMatch(/--out: .* is the file .* that the answer is made from\. Choose another name/);
    expect(status).toBe(2);
    expect(readFileSync(setup, 'utf8')).toBe(readFileSync(example, 'utf8'));
  });
});

describe('a file that is written anew', () => {
  it('keeps who may read it', () => {
    const file = join(place, 'private.yaml');
    writeFileSync(file, 'old');
    chmodSync(file, 0o600);
    expect(run('new', file, '--force').status).toBe(0);
    expect(statSync(file).mode & 0o777).toBe(0o600);
  });
  it('is left alone when it is protected', () => {
    const file = join(place, 'protected.yaml');
    writeFileSync(file, 'old');
    chmodSync(file, 0o444);
    const { status, stderr } = run('new', file, '--force');
    expect(stderr).toMatch(/protected\.yaml: (is protected against writing|no permission to write it)/);
    expect(status).toBeGreaterThan(0);
    expect(readFileSync(file, 'utf8')).toBe('old');
  });
  it('may have a name as long as names can be, with blanks and letters of any script', () => {
    // 255 bytes are the longest name of common file systems.
    const file = join(place, `${'b'.repeat(250)}.yaml`);
    for (const name of [file, join(place, 'mein Bogen – лук 弓.yaml')]) {
      expect(run('new', name).status).toBe(0);
      expect(readFileSync(name, 'utf8')).toContain('bow:');
    }
  });
  it('and one with a longer name is refused in words', () => {
    const { status, stderr } = run('new', join(place, `${'b'.repeat(300)}.yaml`));
    expect(stderr).toMatch(/the name is too long\. Choose a shorter one/);
    expect(status).toBe(2);
  });
  it('takes away what a killed run left, and nothing of a run that may still write', () => {
    // FNV-1a of 32 bits: from its offset basis, each byte is put in by an exclusive or, then multiplied by its prime.
    const hash = [...Buffer.from(hostname())].reduce(
      (sum, byte) => BigInt.asUintN(32, (sum ^ BigInt(byte)) * 16_777_619n),
      2_166_136_261n,
    );
    const machine = hash.toString(16).padStart(8, '0');
    const gone = spawnSync(process.execPath, ['-e', '']).pid;
    const names = [
      ['of a process that is gone', `.quillpath-${machine}-${gone}-0123456789abcdef.part`, 0],
      ['of this process', `.quillpath-${machine}-${process.pid}-0123456789abcdef.part`, 0],
      ['of another machine', '.quillpath-00000000-1-0123456789abcdef.part', 0],
      ['of another machine, two hours old', '.quillpath-00000000-2-0123456789abcdef.part', 2],
      ['of nobody of ours, two hours old', 'mine.part', 2],
    ] as const;
    for (const [, name, hours] of names) {
      writeFileSync(join(place, name), '');
      const time = (Date.now() - hours * 3_600_000) / 1000;
      utimesSync(join(place, name), time, time);
    }
    expect(run('new', join(place, 'after.yaml')).status).toBe(0);
    const left = names.filter(([, name]) => existsSync(join(place, name)));
    expect(left.map(([whose]) => whose)).toEqual([
      'of this process',
      'of another machine',
      'of nobody of ours, two hours old',
    ]);
  });
  it('leaves its other names what they had, as copies made of links rely on', () => {
    const [written, kept] = [join(place, 'now.svg'), join(place, 'yesterday.svg')];
    writeFileSync(written, 'as it was');
    linkSync(written, kept);
    expect(run('tape', example, '--out', written).status).toBe(0);
    expect(readFileSync(written, 'utf8')).toMatch(/<\/svg>\s*$/);
    expect(readFileSync(kept, 'utf8')).toBe('as it was');
  });
});
