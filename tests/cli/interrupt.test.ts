import { spawn, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, it } from 'vitest';

const folder = mkdtempSync(join(tmpdir(), 'quillpath-'));
const SCATTER = ['scatter', 'examples/mountain-hunt/setup.yaml'];

/** The build of package.json, into a folder of its own. */
beforeAll(() => {
  const { scripts } = JSON.parse(readFileSync('package.json', 'utf8'));
  const build = String(scripts.build)
    .replace(/^rm -rf dist && /, '')
    .replace('--outdir=dist', `--outdir=${folder}`);
  const env = { ...process.env, PATH: `node_modules/.bin:${process.env['PATH']}` };
  expect(spawnSync(build, { shell: true, env }).status).toBe(0);
}, 30_000);
afterAll(() => rmSync(folder, { recursive: true }));

it('threads give the hits that one thread gives', async () => {
  const small = [...SCATTER, '--arrows', '120', '--every', '40yd', '--json'];
  const { atTerminal } = await import('./terminal.ts');
  const alone = await atTerminal(small);
  const threaded = spawnSync(process.execPath, [join(folder, 'main.js'), ...small], { encoding: 'utf8' });
  expect(threaded.stdout).toBe(alone.out);
}, 30_000);

it('threads give the sweep that one thread gives', async () => {
  const sweep = [
    'vary',
    'examples/mountain-hunt/setup.yaml',
    '--over',
    'arrow.parts.point.mass=80gr:160gr:1gr',
    '--csv',
  ];
  const { atTerminal } = await import('./terminal.ts');
  const alone = await atTerminal(sweep);
  const threaded = spawnSync(process.execPath, [join(folder, 'main.js'), ...sweep], { encoding: 'utf8' });
  expect(alone.out.split('\r\n')).toHaveLength(83);
  expect(threaded.stdout).toBe(alone.out);
}, 30_000);

it('a Ctrl-C ends a long run with 130 and nothing printed', async () => {
  const child = spawn(process.execPath, [join(folder, 'main.js'), ...SCATTER, '--arrows', '60000']);
  let printed = '';
  child.stdout.on('data', (data) => {
    printed += data;
  });
  child.stderr.on('data', (data) => {
    printed += data;
  });
  await new Promise((resolve) => setTimeout(resolve, 1500));
  const ended = new Promise((resolve) => child.on('exit', (code) => resolve(code)));
  child.kill('SIGINT');
  expect(await ended).toBe(130);
  expect(printed).toBe('');
}, 30_000);
