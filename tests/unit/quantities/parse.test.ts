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
  // As word processors, telephones and other keyboards write them.
  ['\u20131 in', 'length', -0.0254],
  ['\u2013 1 in', 'length', -0.0254],
  ['\u20105 \u2103', 'temperature', 268.15],
  ['\u2014.5 in', 'length', -0.0127],
  ['59 \u2109', 'temperature', 288.15],
  ['\uff12\uff10 yd', 'length', 18.288],
  ['\u201c20 yd\u201d', 'length', 18.288],
  ['\u201e20 yd\u201c', 'length', 18.288],
  ["'20 yd'", 'length', 18.288],
  ['\u00ab 20,5 m \u00bb', 'length', 20.5],
  ['\u201c4 1/2\u201d\u201d', 'length', 4.5 * 0.0254],
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
  // As archers type: fractions, marks, pounds of pull, commas and any letter case.
  ['29 1/2 in', 'length', 29.5 * 0.0254],
  ['29-1/2 in', 'length', 29.5 * 0.0254],
  ['28 1/2"', 'length', 28.5 * 0.0254],
  ['28-1/2"', 'length', 28.5 * 0.0254],
  ['28½"', 'length', 28.5 * 0.0254],
  ['29½ in', 'length', 29.5 * 0.0254],
  ['1/4 in', 'length', 0.25 * 0.0254],
  ['-1/4"', 'length', -0.25 * 0.0254],
  ['½"', 'length', 0.5 * 0.0254],
  ['29"', 'length', 29 * 0.0254],
  ['29\u201d', 'length', 29 * 0.0254],
  ["29''", 'length', 29 * 0.0254],
  ["30'", 'length', 30 * 0.3048],
  ['5\' 3"', 'length', 63 * 0.0254],
  ['2 ft 9 1/2 in', 'length', 33.5 * 0.0254],
  ['28-inch', 'length', 28 * 0.0254],
  ['29 IN', 'length', 29 * 0.0254],
  ['28.5 Inches', 'length', 28.5 * 0.0254],
  ['29 in.', 'length', 29 * 0.0254],
  ['20y', 'length', 18.288],
  ['20Y', 'length', 18.288],
  ['20 yd.', 'length', 18.288],
  ['20 Yards', 'length', 18.288],
  ['18 meters', 'length', 18],
  ['18 M', 'length', 18],
  ['7 MM', 'length', 0.007],
  ['29,5 in', 'length', 29.5 * 0.0254],
  ['0,465 in', 'length', 0.465 * 0.0254],
  ['1,250 ft', 'length', 1250 * 0.3048],
  ['12,500.5 ft', 'length', 12_500.5 * 0.3048],
  ['12 500 ft', 'length', 12_500 * 0.3048],
  ['1.250,5 ft', 'length', 1250.5 * 0.3048],
  ['454 grs', 'mass', 454 * 6.479891e-5],
  ['454 GR', 'mass', 454 * 6.479891e-5],
  ['29.4 Grams', 'mass', 0.0294],
  ['2 pounds', 'mass', 2 * 0.45359237],
  ['281 FPS', 'speed', 281 * 0.3048],
  ['281 feet per second', 'speed', 281 * 0.3048],
  ['281 ft/sec', 'speed', 281 * 0.3048],
  ['10 MPH', 'speed', 4.4704],
  ['5 kts', 'speed', (5 * 1852) / 3600],
  ['5 knots', 'speed', (5 * 1852) / 3600],
  ['60 lbs', 'force', 60 * 4.4482216152605],
  ['60#', 'force', 60 * 4.4482216152605],
  ['60 LB', 'force', 60 * 4.4482216152605],
  ['60 pounds', 'force', 60 * 4.4482216152605],
  ['27 kg', 'force', 27 * 9.80665],
  ['29.92 inhg', 'pressure', 29.92 * 13_595.1 * 9.80665 * 0.0254],
  ['29.92 in Hg', 'pressure', 29.92 * 13_595.1 * 9.80665 * 0.0254],
  ['29.92"', 'pressure', 29.92 * 13_595.1 * 9.80665 * 0.0254],
  ['1013 mb', 'pressure', 101_300],
  ['1013 HPA', 'pressure', 101_300],
  ['68 deg F', 'temperature', 293.15],
  ['68 f', 'temperature', 293.15],
  ['68 degrees Fahrenheit', 'temperature', 293.15],
  ['20 celsius', 'temperature', 293.15],
  ['9.5 GPI', 'massPerLength', (9.5 * 6.479891e-5) / 0.0254],
  ['9.5 grains per inch', 'massPerLength', (9.5 * 6.479891e-5) / 0.0254],
  ['2.5 Degrees', 'angle', (2.5 * Math.PI) / 180],
  ['31,9', 'ratio', 31.9],
  ['1/7', 'ratio', 1 / 7],
  ['45 pct', 'ratio', 0.45],
  ['three', 'ratio', 3],
  ['78 ft-lbs', 'energy', 78 * 1.3558179483314],
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
    ['3', 'angle', 'no-unit', '"3 deg"'],
    ['29,5', 'length', 'decimal-comma', '"29.5 in" or "749 mm"'],
    ['29 1/2', 'length', 'fraction', '"29.5 in" or "749 mm"'],
    ['1 3/2 in', 'length', 'fraction', '"2.5 in"'],
    ['29"', 'speed', 'quote-mark', '"29 fps" or "8.84 m/s"'],
    ['60 gr', 'force', 'wrong-dimension', '"60 lbf"'],
    ['1 lbf', 'mass', 'wrong-dimension', '"1 lb"'],
    ['281 ft', 'speed', 'wrong-dimension', '"281 fps"'],
    ['85 m', 'speed', 'wrong-dimension', '"85 m/s"'],
    ['9.5 gr', 'massPerLength', 'wrong-dimension', '"9.5 gpi"'],
    ['5 min', 'length', 'wrong-dimension', '"5 in" or "127 mm"'],
    ['5 W', 'length', 'wrong-dimension', '"5 in" or "127 mm"'],
    ['281 fsp', 'speed', 'unknown-unit', '"281 fps"'],
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
    expect(() => parseQuantity('60 gr', 'force')).toThrow('"60 gr" is a mass, not a force');
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
