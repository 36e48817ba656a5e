import { parentPort } from 'node:worker_threads';
import { perform } from '../../reports/tasks.ts';
import { sentError } from './sent-error.ts';
import type { Order, Reply } from './worker-pool.ts';

/** The whole of a thread: does what it is sent. */
parentPort?.on('message', async ({ index, task, job }: Order) => {
  const reply = (found: Reply): void => parentPort?.postMessage(found);
  try {
    // The pool sends each task the jobs that are its own.
    reply({ index, answer: await perform(task, job as Parameters<typeof perform>[1]) });
  } catch (error) {
    reply({ index, failure: sentError(error) });
  }
});
