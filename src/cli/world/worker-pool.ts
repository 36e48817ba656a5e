import { Worker } from 'node:worker_threads';
import { type Answer, type Job, ownThread, type Pool, type TaskName } from '../../reports/tasks.ts';
import { codeOf } from './file-words.ts';
import { receivedError, type SentError } from './sent-error.ts';
import { THREAD } from './thread-role.ts';

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

const started = (file: URL): Worker =>
  new Worker(file, { argv: [THREAD], resourceLimits: { maxYoungGenerationSizeMb: YOUNG } });

/** As many threads as the system has room for: one that it refuses leaves the work to the others. */
function asManyAs(count: number, start: () => Worker): readonly Worker[] {
  const workers: Worker[] = [];
  try {
    while (workers.length < count) workers.push(start());
  } catch {
    // The work is done by those that there are.
  }
  return workers;
}

/**
 * Threads that live for one `map`; each takes the next job when it has done its last. The first failure ends all of them and is
 * thrown. Where the system has no room for a single thread, the work is done on this one.
 *
 * @param file the file that the program itself is started with
 */
export const threadPool = (file: URL, threads: number, start: (file: URL) => Worker = started): Pool => ({
  threads,
  map: <T extends TaskName>(task: T, jobs: readonly Job<T>[], done?: (count: number) => void) => {
    const workers = asManyAs(Math.min(threads, jobs.length), () => start(file));
    if (workers.length === 0) return ownThread.map(task, jobs, done);
    return new Promise<readonly Answer<T>[]>((resolve, reject) => {
      const answers: unknown[] = new Array(jobs.length);
      const waiting = [...jobs.keys()];
      const given = new Map<Worker, number>();
      const lost = new Set<Worker>();
      let [finished, isOver] = [0, false];
      const end = (settle: () => void): void => {
        if (isOver) return;
        isOver = true;
        for (const worker of workers) void worker.terminate();
        settle();
      };
      const give = (worker: Worker): void => {
        const index = waiting.shift();
        if (index === undefined) {
          given.delete(worker);
          return;
        }
        const order: Order = { index, task, job: jobs[index] };
        given.set(worker, index);
        worker.postMessage(order);
      };
      /** The job of a thread that could not begin goes to another, and to this thread when there is none left. */
      const lose = (worker: Worker): void => {
        lost.add(worker);
        if (lost.size === workers.length) {
          end(() => resolve(ownThread.map(task, jobs, done)));
          return;
        }
        const index = given.get(worker);
        given.delete(worker);
        if (index === undefined) return;
        waiting.unshift(index);
        const idle = workers.find((each) => !lost.has(each) && !given.has(each));
        if (idle !== undefined) give(idle);
      };
      for (const worker of workers) {
        worker.on('error', (error) => {
          if (codeOf(error) === NOT_STARTED) lose(worker);
          else end(() => reject(error));
        });
        worker.on('exit', () => {
          if (!lost.has(worker))
            end(() => reject(new Error('a thread of the program was ended from outside')));
        });
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
    });
  },
});

/** What the system says of a thread that it has no room for. */
const NOT_STARTED = 'ERR_WORKER_INIT_FAILED';
