import { execFileSync, spawnSync } from 'node:child_process';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import * as nodeModule from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { checksum, keptCode } from '../../src/cli/start/kept-code.ts';

/** A copy of what is installed, so that what runs beside it is not disturbed. */
const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
const program = join(folder, 'cli', 'quillpath.js');
const file = `${program}.cache`;
const copy = (): void => {
  for (const name of ['main.js', 'package.json', 'cli'])
    cpSync(join(inject('dist'), name), join(folder, name), { recursive: true });
};
beforeEach(copy);
afterAll(() => rmSync(folder, { recursive: true }));

const ASKED = ['marks', 'examples/mountain-hunt/setup.yaml', '--from', '20yd', '--to', '60yd'];
const answer = (...flags: string[]) => {
  const argv = [...flags, join(folder, 'main.js'), ...ASKED];
  const { status, stdout, stderr } = spawnSync(process.execPath, argv, { encoding: 'utf8' });
  return { status, stdout, stderr };
};
const right = {
  status: 0,
  stdout: execFileSync(process.execPath, [join(inject('dist'), 'cli/quillpath.js'), ...ASKED], {
    encoding: 'utf8',
  }),
  stderr: '',
};

/** Code as the build keeps it: the checksum of itself and the source before it. */
function keep(code: Uint8Array): void {
  const head = Buffer.alloc(4);
  head.writeUInt32LE(checksum(readFileSync(program), code));
  writeFileSync(file, Buffer.concat([head, code]));
}
const code = (): Buffer => readFileSync(file).subarray(4);

/** A process that says whether V8 takes the code that lies there: 'false' when it is not refused. */
const isRefused = (...flags: string[]): string =>
  execFileSync(
    process.execPath,
    [
      ...flags,
      '-p',
      `const read = require('fs').readFileSync;
       const [source, kept] = [read(${JSON.stringify(program)}), read(${JSON.stringify(file)})];
       new (require('vm').Script)(source.toString('latin1'), { cachedData: kept.subarray(4) }).cachedDataRejected`,
    ],
    { encoding: 'utf8' },
  ).trim();

// Node 22 and later keep the code themselves, and the build does not.
describe.runIf(!('enableCompileCache' in nodeModule))('the code that the build keeps', () => {
  it('is sound, is taken by V8, and gives the right answer', () => {
    expect(code().equals(keptCode(readFileSync(program), file) ?? new Uint8Array())).toBe(true);
    expect(isRefused()).toBe('false');
    expect(answer()).toEqual(right);
  });
  it('is not used when it is damaged, wherever a byte is wrong, and the answer is right', () => {
    const whole = readFileSync(file);
    // Twelve places from the checksum to the last byte: V8 itself would run most of what that gives.
    for (let i = 0; i < 12; i += 1) {
      const damaged = Buffer.from(whole);
      const place = Math.round((i / 11) * (whole.length - 1));
      damaged.writeUInt8(damaged.readUInt8(place) ^ 0xff, place);
      writeFileSync(file, damaged);
      expect(keptCode(readFileSync(program), file)).toBeUndefined();
      if (i % 4 === 0) expect(answer()).toEqual(right);
    }
  });
  it.each([0, 3, 1000])(
    'is not used when only %d bytes of it are there, and the answer is right',
    (length) => {
      writeFileSync(file, readFileSync(file).subarray(0, length));
      expect(keptCode(readFileSync(program), file)).toBeUndefined();
      expect(answer()).toEqual(right);
    },
  );
  it('is not used for another script of the same length, and the answer is that of the script', () => {
    const text = readFileSync(program, 'utf8');
    const other = text.replaceAll('density altitude', 'DENSITY ALTITUDE').replace(/\n\/\/ ..../, '\n// beef');
    expect(other.length).toBe(text.length);
    writeFileSync(program, other);
    expect(isRefused()).toBe('false');
    expect(answer().stdout).toBe(right.stdout.replaceAll('density altitude', 'DENSITY ALTITUDE'));
    expect(answer().stdout).toContain('DENSITY ALTITUDE');
  });
  it('is refused when another version made it, and the answer is right', () => {
    // V8's header: a magic number, then the hash of its version, 4 bytes each (v8/src/snapshot/code-serializer.h).
    const foreign = Buffer.from(code());
    foreign.writeUInt32LE((foreign.readUInt32LE(4) ^ 1) >>> 0, 4);
    keep(foreign);
    expect(isRefused()).toBe('true');
    expect(answer()).toEqual(right);
  });
  it('is refused by a Node that is started with other flags, and the answer is right', () => {
    expect(isRefused('--no-opt')).toBe('true');
    expect(answer('--no-opt')).toEqual(right);
  });
  it('need not be there', () => {
    rmSync(file);
    expect(answer()).toEqual(right);
  });
  it('is written by nobody but the build: a run leaves the folder as it is, so it may be read-only', () => {
    const before = readdirSync(folder, { recursive: true });
    rmSync(file);
    expect(answer()).toEqual(right);
    copy();
    expect(answer()).toEqual(right);
    expect(readdirSync(folder, { recursive: true })).toEqual(before);
  });
});

it('the version is told without the program', () => {
  rmSync(join(folder, 'cli'), { recursive: true });
  const { version } = JSON.parse(readFileSync('package.json', 'utf8'));
  for (const asked of ['--version', '-V'])
    expect(execFileSync(process.execPath, [join(folder, 'main.js'), asked], { encoding: 'utf8' })).toBe(
      `${version}\n`,
    );
});
