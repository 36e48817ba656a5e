/** Something on the command line that cannot be done, and what to write instead. */
export class QuestionError extends Error {
  readonly code = 'command-line';
  readonly write: string;

  constructor(message: string, write: string) {
    super(message);
    this.name = 'QuestionError';
    this.write = write;
  }
}
