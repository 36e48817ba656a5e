/** Something on the command line that cannot be done, such as the name of a file, and what to write instead. */
export class CommandLineError extends Error {
  readonly code = 'command-line';

  constructor(wrong: string, write: string) {
    super(`${wrong}. ${write}`);
    this.name = 'CommandLineError';
  }
}
