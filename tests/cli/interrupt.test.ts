import { spawn, spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect, inject, it } from 'vitest';
import { atTerminal } from './terminal.ts';

const program = join(inject('dist'), 'main.js');
const SCATTER = ['scatter', 'examples/mountain-hunt/setup.yaml'];

// 60 arrows are two jobs for every cause, so the threads also put the jobs together in order.
it('threads give the hits that one thread gives', async () => {
  const small = [...SCATTER, '--uncalibrated', '--arrows', '60', '--every', '50yd', '--json'];
  const alone = await atTerminal(small);
  const threaded = spawnSync(process.execPath, [program, ...small], { encoding: 'utf8' });
  expect(threaded.stdout).toBe(alone.out);
});

it('threads give the sweep that one thread gives', async () => {
  const sweep = [
    'vary',
    'examples/mountain-hunt/setup.yaml',
    '--over',
    'arrow.parts.point.mass=100gr:164gr:1gr',
    '--at',
    '20yd',
    '--uncalibrated',
    '--csv',
  ];
  const alone = await atTerminal(sweep);
  const threaded = spawnSync(process.execPath, [program, ...sweep], { encoding: 'utf8' });
  // 65 point masses, enough for threads, between the header and the end of the last line.
  expect(alone.out.split('\r\n')).toHaveLength(67);
  expect(threaded.stdout).toBe(alone.out);
});

/** Makes the program believe that somebody watches its standard error, so that it shows there how far it is. */
const WATCHED = ['--import', 'data:text/javascript,process.stderr.isTTY=true'];

it('a Ctrl-C ends a long run with 130, takes the progress bar away and prints no answer', async () => {
  const child = spawn(process.execPath, [...WATCHED, program, ...SCATTER, '--arrows', '6000']);
  let [answer, progress] = ['', ''];
  child.stdout.on('data', (data) => {
    answer += data;
  });
  const ended = new Promise((resolve) => child.on('exit', (code) => resolve(code)));
  await new Promise<void>((resolve) =>
    child.stderr.on('data', (data) => {
      progress += data;
      resolve();
    }),
  );
  expect(progress).toMatch(/\[#* *\] \d+ %, \d+ s left$/);
  child.kill('SIGINT');
  expect(await ended).toBe(130);
  expect(progress.endsWith('\r\u001b[K')).toBe(true);
  expect(answer).toBe('');
});
