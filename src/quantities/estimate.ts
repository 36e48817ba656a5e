/** A value with its standard uncertainty, both in the same unit. */
export interface Estimate<T extends number = number> {
  readonly value: T;
  readonly sd: T;
}
