/**
 * Work that may be spread over the processor's cores, by name. Each is a pure function of plain data, loaded where it runs;
 * a job and its answer must survive being sent from thread to thread.
 */
const TASKS = {
  scatter: async () => (await import('../advice/scatter/scatter.ts')).scatterHits,
  vary: async () => (await import('./vary/cells.ts')).varyCells,
};

export type TaskName = keyof typeof TASKS;
type Work<T extends TaskName> = Awaited<ReturnType<(typeof TASKS)[T]>>;
export type Job<T extends TaskName> = Parameters<Work<T>>[0];
export type Answer<T extends TaskName> = Awaited<ReturnType<Work<T>>>;

/** Do one job of a task. The compiler cannot follow the name to both the work and its job. */
export async function perform<T extends TaskName>(task: T, job: Job<T>): Promise<Answer<T>> {
  const work = (await TASKS[task]()) as (job: Job<T>) => Answer<T> | Promise<Answer<T>>;
  return work(job);
}

/** Does the jobs of a task, on as many threads as it has, and gives the answers in the order of the jobs. */
export interface Pool {
  readonly threads: number;
  /** @param done is called after each job with how many are done */
  readonly map: <T extends TaskName>(
    task: T,
    jobs: readonly Job<T>[],
    done?: (count: number) => void,
  ) => Promise<readonly Answer<T>[]>;
}

/** No threads: the jobs one after another, for tests and for small work. */
export const ownThread: Pool = {
  threads: 1,
  map: async (task, jobs, done) => {
    const answers = [];
    for (const job of jobs) {
      answers.push(await perform(task, job));
      done?.(answers.length);
    }
    return answers;
  },
};
