import { NumericalError, type NumericalErrorCode } from '../../numerics/numerical-error.ts';
import { DomainError } from '../../quantities/domain-error.ts';

/** An error as plain data: one thread sends another an Error without its class and its fields. */
export type SentError =
  | {
      readonly name: 'NumericalError';
      readonly code: NumericalErrorCode;
      readonly message: string;
      readonly at: number | undefined;
      readonly reason: string | undefined;
    }
  | {
      readonly name: 'DomainError';
      readonly quantity: string;
      readonly found: number;
      readonly allowed: string;
      readonly beyond: number | undefined;
    }
  | { readonly name: 'other'; readonly error: unknown };

export function sentError(error: unknown): SentError {
  if (error instanceof NumericalError)
    return {
      name: 'NumericalError',
      code: error.code,
      message: error.message,
      at: error.at,
      reason: error.reason,
    };
  if (error instanceof DomainError)
    return {
      name: 'DomainError',
      quantity: error.quantity,
      found: error.found,
      allowed: error.allowed,
      beyond: error.beyond,
    };
  return { name: 'other', error };
}

/** The error as it was thrown on the other thread. */
export function receivedError(sent: SentError): unknown {
  if (sent.name === 'NumericalError')
    return new NumericalError(sent.code, sent.message, { at: sent.at, reason: sent.reason });
  if (sent.name === 'DomainError')
    return new DomainError(sent.quantity, sent.found, sent.allowed, sent.beyond);
  return sent.error;
}
