import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, inject, it } from 'vitest';

const example = 'examples/mountain-hunt/setup.yaml';
const program = join(inject('dist'), 'main.js');
const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
afterAll(() => rmSync(folder, { recursive: true }));
const pipe = join(folder, 'pipe');
const hasPipes = process.platform !== 'win32' && spawnSync('mkfifo', [pipe]).status === 0;

describe('what has no end is read no further than a setup can be long', () => {
  it.runIf(existsSync('/dev/zero'))('a device', () => {
    const { status, stderr } = spawnSync(process.execPath, [program, 'check', '/dev/zero'], {
      encoding: 'utf8',
      timeout: 10_000,
    });
    expect(stderr).toContain('the file is too long');
    expect(status).toBe(2);
  });
  it('a pipe', () => {
    const endless = `const { spawn } = require('node:child_process');
      const child = spawn(process.execPath, [${JSON.stringify(program)}, 'check', '-'], { stdio: ['pipe', 1, 2] });
      child.stdin.on('error', () => {});
      const more = () => { while (child.exitCode === null && child.stdin.write('a: 1\\n'.repeat(10000))); };
      child.stdin.on('drain', more);
      child.on('exit', (code) => process.exit(code));
      more();`;
    const { status, stderr } = spawnSync(process.execPath, ['-e', endless], {
      encoding: 'utf8',
      timeout: 20_000,
    });
    expect(stderr).toContain('the file is too long');
    expect(status).toBe(2);
  });
  it('nor is a long text of long characters taken for a short one', () => {
    const long = join(folder, 'long.yaml');
    writeFileSync(long, `# ${'\u20ac'.repeat(300_000)}\n${readFileSync(example, 'utf8')}`);
    const { status, stderr } = spawnSync(process.execPath, [program, 'check', long], { encoding: 'utf8' });
    expect(stderr).toContain('the file is too long');
    expect(status).toBe(2);
  });
});

it.runIf(existsSync('/dev/stdin'))('standard input is read under its other name too', () => {
  const input = readFileSync(example);
  const { status, stdout } = spawnSync(process.execPath, [program, 'check', '/dev/stdin'], {
    input,
    encoding: 'utf8',
  });
  expect(stdout).toContain('463');
  expect(status).toBe(0);
});

it.runIf(hasPipes)('a named pipe is read like a file', async () => {
  const child = spawn(process.execPath, [program, 'check', pipe]);
  const ended = new Promise((resolve) => child.on('exit', resolve));
  spawnSync('sh', ['-c', 'cat "$0" > "$1"', example, pipe], { timeout: 20_000 });
  expect(await ended).toBe(0);
});

describe.runIf(hasPipes)('a run that waits', () => {
  it.each(['SIGINT', 'SIGTERM'] as const)('ends at once by %s', async (signal) => {
    for (const argv of [
      ['check', '-'],
      ['check', pipe],
      ['new', pipe, '--force'],
    ]) {
      const child = spawn(process.execPath, [program, ...argv], { stdio: ['pipe', 'ignore', 'ignore'] });
      const ended = new Promise((resolve) => child.on('exit', (_, by) => resolve(by)));
      // Long enough to start and to wait for what never comes.
      await new Promise((resolve) => setTimeout(resolve, 500));
      child.kill(signal);
      expect(await Promise.race([ended, new Promise((resolve) => setTimeout(resolve, 10_000))])).toBe(signal);
    }
  });
});
