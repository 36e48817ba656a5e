import { DomainError } from '../../quantities/domain-error.ts';

/** Digits worth printing when a column states none: more than any measurement here carries. */
const SIGNIFICANT_DIGITS = 6;

/**
 * A number as printed: with `digits` decimals, or, when they are not stated, in up to six significant digits.
 * A negative number that rounds to nothing is printed without its sign.
 * @throws DomainError for a number that is not finite: a document has no place for one
 */
export function numberText(value: number, digits?: number): string {
  if (!Number.isFinite(value))
    throw new DomainError('a printed number', value, 'finite numbers; use null for "none"');
  const text =
    digits === undefined ? String(Number(value.toPrecision(SIGNIFICANT_DIGITS))) : value.toFixed(digits);
  return Number(text) === 0 ? text.replace('-', '') : text;
}

/**
 * Numbers in a text as type sets them: with a minus sign as wide as a digit instead of a hyphen. Dates and compounds keep
 * theirs.
 */
export const typeset = (text: string): string => text.replace(/(?<![\p{L}\p{N}.-])-(?=\.?\d)/gu, '\u2212');
