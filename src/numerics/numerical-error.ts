export type NumericalErrorCode =
  | 'not-bracketed'
  | 'not-converged'
  | 'non-finite'
  | 'too-many-evaluations'
  | 'singular';

/** A calculation that could not be carried through, and how far it came. */
export class NumericalError extends Error {
  readonly code: NumericalErrorCode;
  /** The value of the independent variable that was reached, where there is one. */
  readonly at: number | undefined;

  constructor(code: NumericalErrorCode, message: string, at?: number) {
    super(message);
    this.name = 'NumericalError';
    this.code = code;
    this.at = at;
  }
}
