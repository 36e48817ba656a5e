import process from 'node:process';
import { Worker } from 'node:worker_threads';

/** Longer than any case should take, s; a case that has not ended by then never will. */
const PATIENCE = 120;
const LONGEST_CASE = 1_000_000;

/** Runs beside the work, which may never come back: looks from time to time whether the case is still the same. */
const WATCH = `
  const { workerData: { shared, patience, pid } } = require('node:worker_threads');
  const { writeSync } = require('node:fs');
  const [count, length] = [new Int32Array(shared, 0, 1), new Int32Array(shared, 4, 1)];
  let [last, since] = [-1, Date.now()];
  setInterval(() => {
    const now = Atomics.load(count, 0);
    if (now !== last) [last, since] = [now, Date.now()];
    else if (Date.now() - since > 1000 * patience) {
      writeSync(1, 'This case does not end:\\n');
      writeSync(1, Buffer.from(new Uint8Array(shared, 8, length[0]).slice()));
      process.kill(pid, 'SIGKILL');
    }
  }, 1000);
`;

/** @returns a function to be told of every case before it is tried */
export function watchForHangs(): (shown: string) => void {
  const shared = new SharedArrayBuffer(8 + LONGEST_CASE);
  const head = new Int32Array(shared, 0, 2);
  const room = new Uint8Array(shared, 8);
  const worker = new Worker(WATCH, {
    eval: true,
    workerData: { shared, patience: PATIENCE, pid: process.pid },
  });
  worker.unref();
  return (shown) => {
    const { written } = new TextEncoder().encodeInto(shown, room);
    head[1] = written;
    Atomics.add(head, 0, 1);
  };
}
