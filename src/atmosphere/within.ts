import { DomainError } from '../quantities/domain-error.ts';

/** Refuse a value outside [low, high], and NaN with it. */
export function within(quantity: string, value: number, low: number, high: number): void {
  if (!(value >= low && value <= high)) throw new DomainError(quantity, value, `${low} to ${high}`);
}
