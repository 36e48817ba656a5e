import process from 'node:process';
import type { Pool } from '../../reports/tasks.ts';

/** As a shell reports a program that a Ctrl-C ended: 128 and the signal's number. */
const EXIT_INTERRUPTED = 130;

/**
 * The pool with the progress bar wiped away by a Ctrl-C. Only while threads work: then the main thread listens. At any other
 * time it may be reading or computing, a listener would not be called, and the system ends the program at once because there
 * is none.
 */
export const interruptible = (pool: Pool, wipe: () => void): Pool => ({
  threads: pool.threads,
  map: async (task, jobs, done) => {
    const stop = (): void => {
      wipe();
      process.exit(EXIT_INTERRUPTED);
    };
    process.once('SIGINT', stop);
    try {
      return await pool.map(task, jobs, done);
    } finally {
      process.off('SIGINT', stop);
    }
  },
});
