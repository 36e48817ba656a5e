import { describe, expect, expectTypeOf, it } from 'vitest';
import type { Dimension } from '../../../src/quantities/dimension.ts';
import { parseDifference, parseQuantity } from '../../../src/quantities/parse.ts';
import type { Kilograms, Metres } from '../../../src/quantities/quantity.ts';
import { QuantityError, type QuantityErrorCode } from '../../../src/quantities/quantity-error.ts';

/** Text, dimension, and the SI value by hand from the definitions of reference/unit-definitions. */
const readable: readonly [text: string, dimension: Dimension, si: number][] = [
  ['28.5 in', 'length', 28.5 * 0.0254],
  ['28.5in', 'length', 28.5 * 0.0254],
  ['  29 inches ', 'length', 29 * 0.0254],
  ['-1 in', 'length', -0.0254],
  ['\u22121 in', 'length', -0.0254],
  ['20 yd', 'length', 18.288],
  ['20 yds', 'length', 18.288],
  ['20 yards', 'length', 18.288],
  ['3 ft', 'length', 0.9144],
  ['1 mm', 'length', 0.001],
  ['250 m', 'length', 250],
  ['.5 in', 'length', 0.0127],
  ['1e3 mm', 'length', 1],
  ['20\u00a0yd', 'length', 18.288],
  ['452 gr', 'mass', 452 * 6.479891e-5],
  ['452gn', 'mass', 452 * 6.479891e-5],
  ['452 grains', 'mass', 452 * 6.479891e-5],
  ['452 grain', 'mass', 452 * 6.479891e-5],
  ['1 lb', 'mass', 0.45359237],
  ['29.3 g', 'mass', 0.0293],
  ['281 fps', 'speed', 281 * 0.3048],
  ['281 ft/s', 'speed', 281 * 0.3048],
  ['10 mph', 'speed', 4.4704],
  ['36 km/h', 'speed', 10],
  ['36 kph', 'speed', 10],
  ['1 knot', 'speed', 1852 / 3600],
  ['3 deg', 'angle', (3 * Math.PI) / 180],
  ['3°', 'angle', (3 * Math.PI) / 180],
  ['0.1 rad', 'angle', 0.1],
  ['60 arcmin', 'angle', Math.PI / 180],
  ['60 moa', 'angle', Math.PI / 180],
  ['5 mrad', 'angle', 0.005],
  ['59 degF', 'temperature', 288.15],
  ['59 F', 'temperature', 288.15],
  ['59 °F', 'temperature', 288.15],
  ['59F', 'temperature', 288.15],
  ['15 degC', 'temperature', 288.15],
  ['15 °C', 'temperature', 288.15],
  ['-15 C', 'temperature', 258.15],
  ['288.15 K', 'temperature', 288.15],
  ['29.92 inHg', 'pressure', 29.92 * 13_595.1 * 9.80665 * 0.0254],
  ['1013.25 hPa', 'pressure', 101_325],
  ['1013.25 mbar', 'pressure', 101_325],
  ['68 lbf', 'force', 68 * 4.4482216152605],
  ['300 N', 'force', 300],
  ['9.5 gpi', 'massPerLength', (9.5 * 6.479891e-5) / 0.0254],
  ['9.5 gr/in', 'massPerLength', (9.5 * 6.479891e-5) / 0.0254],
  ['50 %', 'ratio', 0.5],
  ['50%', 'ratio', 0.5],
  ['50 percent', 'ratio', 0.5],
  ['0.07', 'ratio', 0.07],
  ['-12.4', 'ratio', -12.4],
  ['0.03 in/yd', 'ratio', 0.03 / 36],
  ['1.5 s', 'time', 1.5],
  ['78 ft lbf', 'energy', 78 * 1.3558179483314],
  ['78 ftlbf', 'energy', 78 * 1.3558179483314],
  ['100 J', 'energy', 100],
  // 0.25 x 0.3048 m/s over 5/9 K; a degree of difference has no offset
  ['0.25 fps/degF', 'speedPerTemperature', 0.13716],
  ['0.25 fps per degF', 'speedPerTemperature', 0.13716],
  ['0.25 ft/s/°F', 'speedPerTemperature', 0.13716],
  ['0.25 fps/F', 'speedPerTemperature', 0.13716],
  ['0.1 m/s/K', 'speedPerTemperature', 0.1],
  ['0.1 m/s per degC', 'speedPerTemperature', 0.1],
  ['0.1 m/s per °C', 'speedPerTemperature', 0.1],
];

it.each(readable)('parseQuantity(%j, %j) is %d in SI', (text, dimension, si) => {
  // relative: a handful of roundings of a double
  expect(Math.abs(parseQuantity(text, dimension) - si)).toBeLessThanOrEqual(
    1e-14 * Math.max(1e-3, Math.abs(si)) + 1e-12 * Math.abs(si),
  );
});

const refused: readonly [text: string, dimension: Dimension, code: QuantityErrorCode, suggestion: string][] =
  [
    ['28.5', 'length', 'no-unit', '"28.5 in" or "724 mm"'],
    ['0', 'length', 'no-unit', '"0 in" or "0 mm"'],
    ['59', 'temperature', 'no-unit', '"59 degF" or "15 degC"'],
    ['3', 'angle', 'no-unit', '"3 deg" or "52.4 mrad"'],
    ['29 1/2 in', 'length', 'fraction', '"29.5 in"'],
    ['29-1/2 in', 'length', 'fraction', '"29.5 in"'],
    ['1/4 in', 'length', 'fraction', '"0.25 in"'],
    ['-1/4"', 'length', 'fraction', '"-0.25 in"'],
    ['29½ in', 'length', 'fraction', '"29.5 in"'],
    ['½"', 'length', 'fraction', '"0.5 in"'],
    ['29"', 'length', 'quote-mark', '"29 in"'],
    ["3'", 'length', 'quote-mark', '"3 ft"'],
    ['5\' 3"', 'length', 'quote-mark', '"63 in"'],
    ['29,5 in', 'length', 'decimal-comma', '"29.5 in"'],
    ['29,5', 'length', 'decimal-comma', '"29.5 in" or "749 mm"'],
    ['1,250 ft', 'length', 'decimal-comma', '"1.250 ft" or "1250 ft"'],
    ['60 lbs', 'force', 'wrong-dimension', '"60 lbf"'],
    ['27 kg', 'force', 'wrong-dimension', '"27 kgf"'],
    ['60#', 'force', 'unknown-unit', '"60 lbf"'],
    ['60 pounds', 'force', 'unknown-unit', '"60 lbf"'],
    ['2 pounds', 'mass', 'unknown-unit', '"2 lb"'],
    ['1 lbf', 'mass', 'wrong-dimension', '"1 lb"'],
    ['281 ft', 'speed', 'wrong-dimension', '"281 fps"'],
    ['85 m', 'speed', 'wrong-dimension', '"85 m/s"'],
    ['9.5 gr', 'massPerLength', 'wrong-dimension', '"9.5 gpi"'],
    ['5 min', 'length', 'wrong-dimension', '"5 in" or "127 mm"'],
    ['5 W', 'length', 'wrong-dimension', '"5 in" or "127 mm"'],
    ['281 fsp', 'speed', 'unknown-unit', '"281 fps"'],
    ['29 IN', 'length', 'unknown-unit', '"29 in"'],
    ['29 in.', 'length', 'unknown-unit', '"29 in"'],
    ['29.92 inhg', 'pressure', 'unknown-unit', '"29.92 inHg"'],
    ['12 constructor', 'length', 'unknown-unit', '"12 in" or "305 mm"'],
    ['281 ± 1.5 fps', 'speed', 'unreadable', '"281 fps", and the uncertainty under the key that ends in _sd'],
    ['in', 'length', 'no-number', '"1 in" or "25.4 mm"'],
    ['about 29 in', 'length', 'no-number', '"1 in" or "25.4 mm"'],
    ['', 'length', 'empty', '"1 in" or "25.4 mm"'],
    ['NaN in', 'length', 'not-finite', '"1 in" or "25.4 mm"'],
    ['.inf', 'ratio', 'not-finite', '"1 %" or "0.01"'],
    ['1e999 in', 'length', 'not-finite', '"1 in" or "25.4 mm"'],
    ['1e308 km', 'length', 'not-finite', '"1 in" or "25.4 mm"'],
  ];

describe('parseQuantity says what to write instead', () => {
  it.each(refused)('of %j for %s: %s, write %s', (text, dimension, code, suggestion) => {
    const read = () => parseQuantity(text, dimension);
    expect(read).toThrow(QuantityError);
    expect(read).toThrow(expect.objectContaining({ code, suggestion, found: text }));
  });

  it('names the kind that was found and the one that was expected', () => {
    expect(() => parseQuantity('60 lbs', 'force')).toThrow('"60 lbs" is a mass, not a force');
  });

  it('shows the units that the caller has examples for', () => {
    expect(() => parseQuantity('20', 'length', ['yd', 'm'])).toThrow('Write "20 yd" or "18.3 m".');
  });

  it('does not quote a text of any length in full', () => {
    expect(() => parseQuantity('9'.repeat(10_000), 'length')).toThrow(/^.{0,200}$/);
  });
});

it('parseDifference leaves the offset of a temperature out: 9 degF of difference is 5 K', () => {
  expect(Math.abs(parseDifference('9 degF', 'temperature') - 5)).toBeLessThan(1e-14 /* K, rounding */);
});

it('a zero has no sign', () => expect(Object.is(parseQuantity('-0 in', 'length'), 0)).toBe(true));

it('a quantity has the brand of its dimension', () => {
  expectTypeOf(parseQuantity('1 in', 'length')).toEqualTypeOf<Metres>();
  expectTypeOf(parseQuantity('1 gr', 'mass')).toEqualTypeOf<Kilograms>();
});
