import { ownThread, type Pool } from './tasks.ts';

/** How far a long piece of work is. */
export interface Progress {
  readonly done: (count: number) => void;
  readonly end: () => void;
}

/** What a question needs of the world outside; every door brings its own. */
export interface Occasion {
  /** The day that documents carry. */
  readonly now: Date;
  /** Whether the document on paper is wanted. */
  readonly sheet: boolean;
  /** The processor's cores, fetched when a question has work worth spreading. */
  readonly pool: () => Promise<Pool>;
  /** Told how a long piece of work goes. */
  readonly progress: (label: string, total: number) => Progress;
}

const unwatched: Progress = { done: () => {}, end: () => {} };

/** Alone on one thread, watched by nobody: for scripts and tests. */
export const quietly = (now: Date, sheet = false): Occasion => ({
  now,
  sheet,
  pool: async () => ownThread,
  progress: () => unwatched,
});
