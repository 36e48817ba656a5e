import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { Worker } from 'node:worker_threads';
import { describe, expect, inject, it } from 'vitest';
import { THREAD } from '../../src/cli/world/thread-role.ts';
import { threadPool } from '../../src/cli/world/worker-pool.ts';
import { ask } from '../../src/reports/ask.ts';
import { ownThread } from '../../src/reports/tasks.ts';
import type { VaryJob } from '../../src/reports/vary/cells.ts';
import { openSetup } from '../../src/setup/open.ts';
import { SMALLEST } from '../unit/setup/example-text.ts';

const HUNT = readFileSync('examples/mountain-hunt/setup.yaml', 'utf8');
const BUILDS = readFileSync('examples/which-build/setup.yaml', 'utf8');
const file = pathToFileURL(join(inject('dist'), 'main.js'));
const aThread = (at: URL): Worker => new Worker(at, { argv: [THREAD] });
openSetup(SMALLEST, 's.yaml');
const jobs = [0, 1, 2, 3].map(
  (i): VaryJob => ({
    text: SMALLEST,
    path: 's.yaml',
    uncalibrated: false,
    axes: [{ name: 'arrow.mass', values: ['400 gr', '410 gr', '420 gr', '430 gr'] }],
    from: i,
    to: i + 1,
    ranges: [20],
    crosswind: 1,
  }),
);
const alone = ownThread.map('vary', jobs);

/** A thread that the system refuses after it was asked for, as with no room left for its memory. */
function refusedLater(): Worker {
  const worker = new Worker('', { eval: true });
  const refused = Object.assign(new Error('no room'), { code: 'ERR_WORKER_INIT_FAILED' });
  setImmediate(() => worker.emit('error', refused));
  return worker;
}

function refusedAtOnce(): Worker {
  throw Object.assign(new Error('no room'), { code: 'EAGAIN' });
}

describe('the work is done all the same where the system refuses', () => {
  it.each([
    ['the second thread at once', [aThread, refusedAtOnce]],
    ['every thread at once', [refusedAtOnce]],
    ['the first thread later', [refusedLater, aThread]],
    ['the second thread later', [aThread, refusedLater]],
    ['every thread later', [refusedLater, refusedLater]],
  ])('%s', async (_, starts) => {
    const left = [...starts];
    const start = (at: URL): Worker => (left.shift() ?? refusedAtOnce)(at);
    expect(await threadPool(file, 2, start).map('vary', jobs)).toEqual(await alone);
  });
});

describe.each([
  ['scatter', HUNT, { arrows: '24' }],
  ['compare', BUILDS, { arrows: '24' }],
  ['vary', BUILDS, { over: 'arrow.mass=440gr:460gr:10gr' }],
] as const)('%s gives the same numbers', (name, text, given) => {
  const setup = openSetup(text, 's.yaml');
  const one = ask(name, setup, given);
  it.each([1, 2, 4])('on %i threads', async (threads) => {
    const pool = async () => threadPool(file, threads);
    expect(JSON.stringify(await ask(name, setup, given, { pool }))).toBe(JSON.stringify(await one));
  });
});

it('a thread that is ended from outside ends the run with an error', async () => {
  const start = (at: URL): Worker => {
    const worker = aThread(at);
    void worker.terminate();
    return worker;
  };
  await expect(threadPool(file, 2, start).map('vary', jobs)).rejects.toThrow(/ended from outside/);
});
