import { describe, expect, it } from 'vitest';
import { numberText, typeset } from '../../../../src/documents/table/number-text.ts';
import { DomainError } from '../../../../src/quantities/domain-error.ts';

describe('numberText', () => {
  it.each([
    [12.345, 1, '12.3'],
    [-12.345, 2, '-12.35'],
    [-0.004, 2, '0.00'],
    [-0, 0, '0'],
    [-0.4, 0, '0'],
    [-0.6, 0, '-1'],
    [7, undefined, '7'],
    [0.1 + 0.2, undefined, '0.3'],
    [-0, undefined, '0'],
    [1234567, undefined, '1234570'],
  ])('prints %d with %s decimals as "%s"', (value, digits, text) =>
    expect(numberText(value, digits)).toBe(text),
  );

  it.each([Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY])('refuses %d', (value) =>
    expect(() => numberText(value, 1)).toThrow(DomainError),
  );
});

describe('typeset', () => {
  it.each([
    ['-1.5', '−1.5'],
    ['1.5', '1.5'],
    ['-', '-'],
    ['1e-7', '1e-7'],
    ['it is -0.59 (-.5), by 2026-11-25', 'it is −0.59 (−.5), by 2026-11-25'],
    ['a 3-D bow, 20-60 yd, --x', 'a 3-D bow, 20-60 yd, --x'],
  ])('sets "%s" as "%s"', (text, set) => expect(typeset(text)).toBe(set));
});
