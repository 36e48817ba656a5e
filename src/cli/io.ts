import type { Pool } from '../reports/tasks.ts';

/** Everything the command line needs of the world outside, so that tests can give it another. */
export interface Io {
  readonly out: (text: string) => void;
  readonly err: (text: string) => void;
  /** @throws when the file cannot be read */
  readonly readText: (path: string) => string;
  readonly exists: (path: string) => boolean;
  /** Whether two names are of one file. */
  readonly isSameFile?: (one: string, other: string) => boolean;
  /** The whole file appears under its name, or nothing does. */
  readonly writeWhole: (path: string, content: string | Uint8Array) => void;
  /** The typeface that every document embeds. */
  readonly fonts: () => Promise<{ readonly font: Uint8Array; readonly boldFont: Uint8Array }>;
  readonly now: () => Date;
  /** The moment, in seconds, that stands for now on documents; absent where the environment names none. */
  readonly sourceDateEpoch?: string | undefined;
  /** Width of the terminal in characters; null when the output is not a terminal. */
  readonly columns: number | null;
  /** Whether a person watches standard error, so that a progress bar helps. */
  readonly watched?: boolean;
  /**
   * How a person at the terminal is asked for a line, null when there are no more; null where there is no terminal to answer at.
   * To look for one opens standard input, so only what asks looks.
   */
  readonly asker?: () => ((prompt: string) => Promise<string | null>) | null;
  /** The processor's cores; without it large work is done one job after another. */
  readonly pool?: () => Promise<Pool>;
}
