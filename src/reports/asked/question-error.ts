/** Something on the command line that cannot be done, and what to write instead. */
export class CommandLineError extends Error {
  readonly code = 'command-line';
  readonly write: string;

  constructor(message: string, write: string) {
    super(message);
    this.name = 'CommandLineError';
    this.write = write;
  }
}
