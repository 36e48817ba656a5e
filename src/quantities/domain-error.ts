/** A value for which the mathematics would lie: what it was, and what is allowed. */
export class DomainError extends Error {
  readonly code = 'out-of-domain';
  readonly quantity: string;
  readonly found: number;
  readonly allowed: string;
  /** Where free flight begins, m, when a range is too near for it. */
  readonly beyond: number | undefined;

  constructor(quantity: string, found: number, allowed: string, beyond?: number) {
    super(`${quantity} is ${found}; allowed: ${allowed}`);
    this.name = 'DomainError';
    this.quantity = quantity;
    this.found = found;
    this.allowed = allowed;
    this.beyond = beyond;
  }
}
