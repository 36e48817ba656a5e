export type QuantityErrorCode =
  | 'empty'
  | 'no-number'
  | 'no-unit'
  | 'unknown-unit'
  | 'wrong-dimension'
  | 'not-finite'
  | 'decimal-comma'
  | 'fraction'
  | 'quote-mark'
  | 'unreadable';

/** A text that is not the quantity it should be: why not, what was expected, and what to write instead. */
export class QuantityError extends Error {
  readonly code: QuantityErrorCode;
  /** The text as it was written. */
  readonly found: string;
  /** What is wrong with it, as a clause: `"28.5" has no unit`. */
  readonly reason: string;
  /** The kind of quantity, with its article: `a length`. */
  readonly expected: string;
  /** What to write, in quotation marks: `"28.5 in" or "724 mm"`. */
  readonly suggestion: string;

  constructor(details: {
    code: QuantityErrorCode;
    found: string;
    reason: string;
    expected: string;
    suggestion: string;
  }) {
    super(`${details.reason}; expected ${details.expected}. Write ${details.suggestion}.`);
    this.name = 'QuantityError';
    this.code = details.code;
    this.found = details.found;
    this.reason = details.reason;
    this.expected = details.expected;
    this.suggestion = details.suggestion;
  }
}
