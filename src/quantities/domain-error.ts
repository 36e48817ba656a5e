/** A value for which the mathematics would lie: what it was, and what is allowed. */
export class DomainError extends Error {
  readonly code = 'out-of-domain';
  readonly quantity: string;
  readonly found: number;
  readonly allowed: string;

  constructor(quantity: string, found: number, allowed: string) {
    super(`${quantity} is ${found}; allowed: ${allowed}`);
    this.name = 'DomainError';
    this.quantity = quantity;
    this.found = found;
    this.allowed = allowed;
  }
}
