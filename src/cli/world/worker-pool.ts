import { Worker } from 'node:worker_threads';
import type { Answer, Job, Pool, TaskName } from '../../reports/tasks.ts';
import { receivedError, type SentError } from './sent-error.ts';

/** A job on its way to a thread, and its answer or what went wrong on the way back. */
export interface Order {
  readonly index: number;
  readonly task: TaskName;
  readonly job: unknown;
}
export type Reply = { readonly index: number } & (
  | { readonly answer: unknown }
  | { readonly failure: SentError }
);

/** Memory for short-lived objects, MB: flights make many of them. More memory only grows the process, by 20 MB a thread. */
const YOUNG = 8;

/**
 * Threads that live for one `map`; each takes the next job when it has done its last. The first failure ends all of them and is
 * thrown.
 *
 * @param file the bundled worker.ts
 */
export const threadPool = (file: URL, threads: number): Pool => ({
  threads,
  map: <T extends TaskName>(task: T, jobs: readonly Job<T>[], done?: (count: number) => void) =>
    new Promise<readonly Answer<T>[]>((resolve, reject) => {
      const answers: unknown[] = new Array(jobs.length);
      let [next, finished] = [0, 0];
      const workers = Array.from(
        { length: Math.min(threads, jobs.length) },
        () => new Worker(file, { resourceLimits: { maxYoungGenerationSizeMb: YOUNG } }),
      );
      const end = (settle: () => void): void => {
        for (const worker of workers) void worker.terminate();
        settle();
      };
      const give = (worker: Worker): void => {
        if (next >= jobs.length) return;
        const order: Order = { index: next, task, job: jobs[next] };
        next += 1;
        worker.postMessage(order);
      };
      if (jobs.length === 0) resolve([]);
      for (const worker of workers) {
        worker.on('error', (error) => end(() => reject(error)));
        worker.on('message', (reply: Reply) => {
          if ('failure' in reply) {
            end(() => reject(receivedError(reply.failure)));
            return;
          }
          answers[reply.index] = reply.answer;
          finished += 1;
          done?.(finished);
          // Each index was answered by the task that its order named.
          if (finished === jobs.length) end(() => resolve(answers as Answer<T>[]));
          else give(worker);
        });
        give(worker);
      }
    }),
});
