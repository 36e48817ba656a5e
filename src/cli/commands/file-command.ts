import type { Command } from 'commander';
import type { Io } from '../io.ts';

/** A command that asks no question, and what its help says after the options. */
export interface FileCommand {
  readonly make: (io: Io) => Command;
  /** What to write after the program's name. */
  readonly examples: readonly (readonly [comment: string, line: string])[];
  readonly more?: string;
}
