import type { Pool } from '../../reports/tasks.ts';

/** Who says that a Ctrl-C came. */
interface Signals {
  readonly once: (signal: 'SIGINT', listener: () => void) => unknown;
  readonly off: (signal: 'SIGINT', listener: () => void) => unknown;
}

/**
 * The pool with what a Ctrl-C does. Only while threads work: then the main thread listens. At any other time it may be reading or
 * computing, a listener would not be called, and the system ends the program at once because there is none.
 */
export const interruptible = (pool: Pool, signals: Signals, stop: () => void): Pool => ({
  threads: pool.threads,
  map: async (task, jobs, done) => {
    signals.once('SIGINT', stop);
    try {
      return await pool.map(task, jobs, done);
    } finally {
      signals.off('SIGINT', stop);
    }
  },
});
