export type NumericalErrorCode =
  | 'not-bracketed'
  | 'not-converged'
  | 'non-finite'
  | 'too-many-evaluations'
  | 'singular';

/** What more is known of a failure. */
interface FailureDetails {
  /** The value of the independent variable that was reached. */
  readonly at?: number | undefined;
  /** A word for programs that says what could not be found; the room that throws it exports it as a constant. */
  readonly reason?: string | undefined;
}

/** A calculation that could not be carried through, and how far it came. */
export class NumericalError extends Error {
  readonly code: NumericalErrorCode;
  /** The value of the independent variable that was reached, where there is one. */
  readonly at: number | undefined;
  /** What could not be found, where the code alone leaves it open and somebody has to know. */
  readonly reason: string | undefined;

  constructor(code: NumericalErrorCode, message: string, details: number | FailureDetails = {}) {
    super(message);
    const { at, reason } = typeof details === 'number' ? { at: details, reason: undefined } : details;
    this.name = 'NumericalError';
    this.code = code;
    this.at = at;
    this.reason = reason;
  }
}

/** Null for what cannot be computed; any other error passes through. */
export function unlessNumericalError<T>(compute: () => T): T | null {
  try {
    return compute();
  } catch (error) {
    if (error instanceof NumericalError) return null;
    throw error;
  }
}
