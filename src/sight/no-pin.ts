import { NumericalError } from '../numerics/numerical-error.ts';

/** The reason of an error that says: no place of the pin puts the arrow there. */
export const NO_PIN = 'no-pin';

/** The reason of an error that says: the sight cannot be zeroed, since no place of the pin puts the arrow there. */
export const NO_ZERO = 'no-zero';

/** @param range where, when it is one range, m */
export const noPin = (message: string, range?: number): NumericalError =>
  new NumericalError('not-converged', message, { at: range, reason: NO_PIN });
