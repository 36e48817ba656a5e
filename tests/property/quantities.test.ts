import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DIMENSIONS, type Dimension } from '../../src/quantities/dimension.ts';
import { type DisplayUnit, formatQuantity, fromSi, toSi } from '../../src/quantities/format.ts';
import { parseDifference, parseQuantity } from '../../src/quantities/parse.ts';
import { QuantityError } from '../../src/quantities/quantity-error.ts';

const SEED = { seed: 20_240_607 };

/** Units that an archer types, with the dimension each is read as. */
const TYPED: readonly [DisplayUnit, Dimension][] = [
  ...(['m', 'cm', 'mm', 'yd', 'ft', 'in', 'thou'] as const).map((unit): [DisplayUnit, Dimension] => [
    unit,
    'length',
  ]),
  ...(['kg', 'g', 'gr', 'lb'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'mass']),
  ...(['m/s', 'fps', 'mph', 'km/h'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'speed']),
  ...(['rad', 'mrad', 'deg', 'arcmin'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'angle']),
  ...(['K', 'degC', 'degF'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'temperature']),
  ...(['Pa', 'hPa', 'inHg'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'pressure']),
  ...(['N', 'lbf'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'force']),
  ...(['J', 'ftlbf'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'energy']),
  ...(['kg/m', 'g/m', 'gpi'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'massPerLength']),
  ...(['%', '1'] as const).map((unit): [DisplayUnit, Dimension] => [unit, 'ratio']),
];
// thou is shown and never typed: its symbol is not a word of mathjs
const typed = fc.constantFrom(...TYPED.filter(([unit]) => unit !== 'thou'));
const value = fc.double({ min: -1e6, max: 1e6, noNaN: true });
const dimension = fc.constantFrom(...Object.keys(DIMENSIONS).filter(isDimension));

function isDimension(name: string): name is Dimension {
  return Object.hasOwn(DIMENSIONS, name);
}

describe('quantities', () => {
  it('parse(format(x)) = x to the digits that were shown', () => {
    fc.assert(
      fc.property(typed, value, ([unit, kind], x) => {
        const si = toSi(x, unit);
        const digits = 6;
        const again = fromSi(parseQuantity(formatQuantity(si, unit, digits), kind), unit);
        // half of the sixth digit, and the rounding of 459.67 through kelvin for °F
        expect(Math.abs(again - x)).toBeLessThanOrEqual(0.5e-6 + 1e-12 * (Math.abs(x) + 500));
      }),
      SEED,
    );
  });

  it('every unit converts both ways', () => {
    fc.assert(
      fc.property(fc.constantFrom(...TYPED), value, ([unit], x) => {
        expect(Math.abs(fromSi(toSi(x, unit), unit) - x)).toBeLessThanOrEqual(1e-12 * (Math.abs(x) + 500));
      }),
      SEED,
    );
  });

  const pieces = fc.array(
    fc.oneof(
      fc.constantFrom(
        '1',
        '29',
        '.',
        ',',
        '/',
        '-',
        '+',
        'e',
        '999',
        ' ',
        'in',
        'gr',
        'lbf',
        '^',
        '(',
        ')',
        '*',
        '%',
        '°',
        '"',
        '½',
      ),
      fc.string({ maxLength: 3 }),
    ),
    { maxLength: 12 },
  );
  const anyText = fc.oneof(
    fc.string({ unit: 'binary' }),
    fc.string(),
    pieces.map((parts) => parts.join('')),
  );

  it('any text is a finite number or a QuantityError that says what to write, and nothing else', () => {
    fc.assert(
      fc.property(anyText, dimension, (text, kind) => {
        for (const parse of [parseQuantity, parseDifference]) {
          try {
            expect(Number.isFinite(parse(text, kind))).toBe(true);
          } catch (error) {
            if (!(error instanceof QuantityError)) throw error;
            expect(error.suggestion).not.toBe('');
          }
        }
      }),
      { ...SEED, numRuns: 3000 },
    );
  });

  it('what is suggested in place of a wrong text is a text that can be read', () => {
    fc.assert(
      fc.property(anyText, dimension, (text, kind) => {
        try {
          parseQuantity(text, kind);
        } catch (error) {
          if (!(error instanceof QuantityError) || error.code === 'unreadable') return;
          const [, first = ''] = /^"([^"]*)"/.exec(error.suggestion) ?? [];
          expect(
            () => parseQuantity(first, kind),
            `${JSON.stringify(text)} -> ${error.suggestion}`,
          ).not.toThrow();
        }
      }),
      { ...SEED, numRuns: 3000 },
    );
  });
});
