import type { Io } from '../io.ts';

/** Characters of the bar itself. */
const BAR = 30;
/** Redrawn at most this often, ms. */
const PAUSE = 100;

/** A bar on standard error that says how far a long run is and how long it may still take; nothing where nobody watches. */
export interface Progress {
  readonly done: (count: number) => void;
  /** Takes the bar away. */
  readonly end: () => void;
}

export function progressBar(io: Io, label: string, total: number): Progress {
  if (io.watched !== true) return { done: () => {}, end: () => {} };
  const start = io.now().getTime();
  let drawn = Number.NEGATIVE_INFINITY;
  let width = 0;
  return {
    done: (count) => {
      const now = io.now().getTime();
      if (now - drawn < PAUSE && count < total) return;
      drawn = now;
      const share = total === 0 ? 1 : count / total;
      const left = share > 0 ? ((now - start) * (1 - share)) / share : 0;
      const filled = Math.round(BAR * share);
      const bar = `[${'#'.repeat(filled)}${' '.repeat(BAR - filled)}]`;
      const line = `${label} ${bar} ${Math.floor(100 * share)} %, ${Math.ceil(left / 1000)} s left`;
      io.err(`\r${line.padEnd(width)}`);
      width = line.length;
    },
    end: () => io.err(`\r${' '.repeat(width)}\r`),
  };
}
