/** A value with its standard uncertainty, both in the same unit. */
export interface Estimate<T extends number = number> {
  readonly value: T;
  readonly sd: T;
}

/** Measurements decide a value when they leave at most this share of what was uncertain about it before: half. */
export const DECIDED = 0.5;
