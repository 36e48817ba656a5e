import { execFileSync, spawnSync } from 'node:child_process';
import { createHash } from 'node:crypto';
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import * as nodeModule from 'node:module';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeEach, describe, expect, inject, it } from 'vitest';
import { checksum, keptCode } from '../../src/cli/start/kept-code.ts';

/** A copy of what is installed, so that what runs beside it is not disturbed. */
const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
const kept = join(folder, 'cli', 'kept');
const PIECES = ['core', 'paper'] as const;
const sourceOf = (piece: string): string => join(kept, `${piece}.js`);
const codeOf = (piece: string): string => `${sourceOf(piece)}.cache`;
const copy = (): void => {
  for (const name of ['main.js', 'package.json', 'cli'])
    cpSync(join(inject('dist'), name), join(folder, name), { recursive: true });
};
beforeEach(copy);
afterAll(() => rmSync(folder, { recursive: true }));

/** A card needs both pieces, and is the same bytes whoever draws it. */
const ASKED = ['card', 'examples/mountain-hunt/setup.yaml', '--to', '60yd', '--date', '2026-09-05'];
const answered = (script: string, ...flags: string[]) => {
  const card = join(folder, 'card.pdf');
  const argv = [...flags, script, ...ASKED, '--out', card];
  const { status, stdout, stderr } = spawnSync(process.execPath, argv, { encoding: 'utf8' });
  return { status, stdout, stderr, card: createHash('sha256').update(readFileSync(card)).digest('hex') };
};
const answer = (...flags: string[]) => answered(join(folder, 'main.js'), ...flags);
const right = answered(join(inject('dist'), 'cli/quillpath.js'));

/** Code as the build keeps it: the checksum of itself and the source before it. */
function keep(piece: string, code: Uint8Array): void {
  const head = Buffer.alloc(4);
  head.writeUInt32LE(checksum(readFileSync(sourceOf(piece)), code));
  writeFileSync(codeOf(piece), Buffer.concat([head, code]));
}
const code = (piece: string): Buffer => readFileSync(codeOf(piece)).subarray(4);
const sound = (piece: string): Uint8Array | undefined =>
  keptCode(readFileSync(sourceOf(piece)), codeOf(piece));

/** A process that says whether V8 takes the code that lies there: 'false' when it is not refused. */
const isRefused = (piece: string, ...flags: string[]): string =>
  execFileSync(
    process.execPath,
    [
      ...flags,
      '-p',
      `const read = require('fs').readFileSync;
       const [source, kept] = [read(${JSON.stringify(sourceOf(piece))}), read(${JSON.stringify(codeOf(piece))})];
       new (require('vm').Script)(source.toString('latin1'), { cachedData: kept.subarray(4) }).cachedDataRejected`,
    ],
    { encoding: 'utf8' },
  ).trim();

// Node 22 and later keep the code themselves, and the build does not.
describe.runIf(!('enableCompileCache' in nodeModule)).each(PIECES)(
  'the code that the build keeps: %s',
  (piece) => {
    it('is sound, is taken by V8, and gives the right answer', () => {
      expect(code(piece).equals(sound(piece) ?? new Uint8Array())).toBe(true);
      expect(isRefused(piece)).toBe('false');
      expect(right.status).toBe(0);
      expect(answer()).toEqual(right);
    });
    it('is not used when it is damaged, wherever a byte is wrong, and the answer is right', () => {
      const whole = readFileSync(codeOf(piece));
      // Twelve places from the checksum to the last byte: V8 itself would run most of what that gives.
      for (let i = 0; i < 12; i += 1) {
        const damaged = Buffer.from(whole);
        const place = Math.round((i / 11) * (whole.length - 1));
        damaged.writeUInt8(damaged.readUInt8(place) ^ 0xff, place);
        writeFileSync(codeOf(piece), damaged);
        expect(sound(piece)).toBeUndefined();
        if (i % 4 === 0) expect(answer()).toEqual(right);
      }
    });
    it.each([0, 3, 1000])(
      'is not used when only %d bytes of it are there, and the answer is right',
      (length) => {
        writeFileSync(codeOf(piece), readFileSync(codeOf(piece)).subarray(0, length));
        expect(sound(piece)).toBeUndefined();
        expect(answer()).toEqual(right);
      },
    );
    it('is refused when another version made it, and the answer is right', () => {
      // V8's header: a magic number, then the hash of its version, 4 bytes each (v8/src/snapshot/code-serializer.h).
      const foreign = Buffer.from(code(piece));
      foreign.writeUInt32LE((foreign.readUInt32LE(4) ^ 1) >>> 0, 4);
      keep(piece, foreign);
      expect(isRefused(piece)).toBe('true');
      expect(answer()).toEqual(right);
    });
    it('is refused by a Node that is started with other flags, and the answer is right', () => {
      expect(isRefused(piece, '--no-opt')).toBe('true');
      expect(answer('--no-opt')).toEqual(right);
    });
    it('need not be there', () => {
      rmSync(codeOf(piece));
      expect(answer()).toEqual(right);
    });
  },
);

describe.runIf(!('enableCompileCache' in nodeModule))('the pieces that the build keeps', () => {
  it('are not used with the code of another one of the same length, and the answer is right', () => {
    const text = readFileSync(sourceOf('core'), 'utf8');
    const other = text.replaceAll('backstop', 'BACKSTOP').replace(/^\/\/ ..../, '// beef');
    expect(other.length).toBe(text.length);
    writeFileSync(sourceOf('core'), other);
    expect(isRefused('core')).toBe('false');
    expect(sound('core')).toBeUndefined();
    expect(answer()).toEqual(right);
  });
  it('are loaded as they are needed: marks need no paper, and a card does', () => {
    writeFileSync(sourceOf('paper'), 'throw new Error("paper was loaded")');
    const marks = spawnSync(process.execPath, [join(folder, 'main.js'), 'marks', ASKED[1] ?? ''], {
      encoding: 'utf8',
    });
    expect([marks.status, marks.stderr]).toEqual([0, '']);
    expect(answer().stderr).toContain('paper was loaded');
  });
  it('need not be there', () => {
    rmSync(kept, { recursive: true });
    expect(answer()).toEqual(right);
  });
  it('are written by nobody but the build: a run leaves the folder as it is, so it may be read-only', () => {
    const before = readdirSync(join(folder, 'cli'), { recursive: true });
    rmSync(codeOf('core'));
    expect(answer()).toEqual(right);
    copy();
    expect(answer()).toEqual(right);
    expect(readdirSync(join(folder, 'cli'), { recursive: true })).toEqual(before);
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
