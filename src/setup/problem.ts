/** One thing wrong with the setup file, with all that is needed to put it right. */
export interface Problem {
  /** From 1; 0 for a value that came from the command line. */
  readonly line: number;
  readonly column: number;
  /** The key path: `arrow.parts.vanes.angle`; entries of lists by their number from 0; empty for the whole file. */
  readonly path: string;
  /** The text that is there, empty when something is missing. */
  readonly found: string;
  readonly allowed: string;
  /** An order: `Write "28.5 in" or "724 mm"`. */
  readonly write: string;
  /** All of it as one line: `setup.yaml:12:11  arrow.parts.shaft.length: "28.5" has no unit. Allowed: ...` */
  readonly message: string;
}

/** So many problems are kept: more than a person makes, where a file of another kind has a hundred thousand. */
export const MOST_KEPT = 200;

/** The problems of a setup file: the first of them, and how many there are. */
export class SetupError extends Error {
  readonly code = 'setup';
  readonly fileName: string;
  /** The first problems, MOST_KEPT at most. */
  readonly problems: readonly Problem[];
  /** Of all the problems, kept or not. */
  readonly count: number;

  /** @param count of all the problems, where not all of them are given */
  constructor(fileName: string, problems: readonly Problem[], count = problems.length) {
    const kept = problems.slice(0, MOST_KEPT);
    super(kept.map(({ message }) => message).join('\n'));
    this.name = 'SetupError';
    this.fileName = fileName;
    this.problems = kept;
    this.count = count;
  }
}
