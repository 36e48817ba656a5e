import { describe, expect, expectTypeOf, it } from 'vitest';
import { displayUnits } from '../../../src/quantities/display-units.ts';
import { fixedDigits, formatQuantity, fromSi, symbolOf, toSi } from '../../../src/quantities/format.ts';
import type { Metres, Pascals } from '../../../src/quantities/quantity.ts';

it.each([
  [0.7239, 'in', 1, '28.5 in'],
  [85.6488, 'fps', 0, '281 ft/s'],
  [288.15, 'degF', 1, '59.0 °F'],
  [288.15, 'degC', 1, '15.0 °C'],
  [1.225, 'lb/ft3', 4, '0.0765 lb/ft³'],
  [100, 'ftlbf', 1, '73.8 ft lbf'],
  [0.5, '%', 0, '50 %'],
  [2.4, '1', 2, '2.40'],
  [Math.PI / 60, 'deg', 1, '3.0°'],
] as const)('formatQuantity(%d, %s, %d) is %s', (value, unit, digits, text) => {
  expect(formatQuantity(value, unit, digits)).toBe(text);
});

describe('fixedDigits', () => {
  it('puts no minus sign before a zero', () => {
    expect(fixedDigits(-0.0004, 2)).toBe('0.00');
    expect(fixedDigits(-0, 0)).toBe('0');
  });

  it('keeps the minus sign of what does not round to zero', () =>
    expect(fixedDigits(-0.006, 2)).toBe('-0.01'));
});

it('toSi has the brand of its unit', () => {
  expectTypeOf(toSi(1, 'in')).toEqualTypeOf<Metres>();
  expectTypeOf(toSi(1, 'inHg')).toEqualTypeOf<Pascals>();
});

it.each(['imperial', 'metric'] as const)(
  'every purpose of the %s units has a unit that converts both ways',
  (system) => {
    const purposes = Object.entries(displayUnits(system));
    expect(purposes.length).toBeGreaterThan(14);
    for (const [, unit] of purposes) expect(fromSi(toSi(3, unit), unit)).toBeCloseTo(3, 12);
  },
);

it('symbols are those of the trade: fps is shown as ft/s', () => {
  expect(symbolOf('fps')).toBe('ft/s');
  expect(symbolOf('ftlbf')).toBe('ft lbf');
});
