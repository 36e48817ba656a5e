import type { Reading } from './report.ts';
import { type Answer, type Job, ownThread, type Pool, type TaskName } from './tasks.ts';

/** How far a long piece of work is. */
export interface Progress {
  readonly done: (count: number) => void;
  readonly end: () => void;
}

/** What a question needs of the world outside; every door brings its own. */
export interface Occasion {
  /** The day that documents carry, `2026-04-18`: the archer's own. */
  readonly day: string;
  /** Whether the document on paper is wanted. */
  readonly sheet: boolean;
  /** Which reading of the report is wanted: where it is the short one, what that does not show may be missing in all the rest. */
  readonly reading: Reading;
  /** The processor's cores, fetched when a question has work worth spreading. */
  readonly pool: () => Promise<Pool>;
  /** Told how a long piece of work goes. */
  readonly progress: (label: string, total: number) => Progress;
}

/** The answers to many jobs in the order of the jobs, spread over the cores, while whoever watches is told how it goes. */
export async function spread<T extends TaskName>(
  { pool, progress }: Pick<Occasion, 'pool' | 'progress'>,
  label: string,
  task: T,
  jobs: readonly Job<T>[],
): Promise<readonly Answer<T>[]> {
  const watched = progress(label, jobs.length);
  try {
    return await (await pool()).map(task, jobs, watched.done);
  } finally {
    watched.end();
  }
}

const unwatched: Progress = { done: () => {}, end: () => {} };

/** Alone on one thread, watched by nobody: for scripts and tests. */
export const quietly = (day: string, sheet = false): Occasion => ({
  day,
  sheet,
  reading: 'whole',
  pool: async () => ownThread,
  progress: () => unwatched,
});
