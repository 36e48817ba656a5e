import { describe, expect, it } from 'vitest';
import { fromSi } from '../../../src/quantities/format.ts';
import { LIMITS, type LimitKey } from '../../../src/setup/schema/limits.ts';
import { readQuantity } from '../../../src/setup/schema/quantity-leaf.ts';

/**
 * Ways of typing that archers use, each with its key and its value in the unit that the limits of the key are written in, worked
 * out by hand from the definitions of the units (1 in = 25.4 mm, 1 yd = 0.9144 m, 1 gr = 64.79891 mg, 1 lbf = 4.4482216152605 N,
 * 1 kn = 1852 m/h).
 */
const READ: readonly [key: LimitKey, typed: string, value: number][] = [
  // Fractions and marks.
  ['bow.draw_length', '28 1/2 in', 28.5],
  ['bow.draw_length', '28-1/2"', 28.5],
  ['bow.draw_length', '28½"', 28.5],
  ['bow.draw_length', '29"', 29],
  ['bow.draw_length', '29 In.', 29],
  ['bow.draw_length', '28.5 Inches', 28.5],
  ['bow.brace_height', '6 1/8"', 6.125],
  ['bow.brace_height', '6-1/8', 6.125],
  ['bow.brace_height', '6,5 in', 6.5],
  ['bow.brace_height', '6.5', 6.5],
  ['bow.peep_height', '4 3/4 in', 4.75],
  ['bow.peep_height', '104 mm', 104 / 25.4],
  ['bow.peep_height', '10,4 cm', 104 / 25.4],
  ['sight.peep_to_pin', '2\' 9 1/2"', 33.5],
  ['sight.peep_to_pin', '2 ft 9 in', 33],
  ['sight.peep_to_pin', '86 cm', 860 / 25.4],
  ['sight.peep_to_pin', '860', 860 / 25.4],
  ['arrow.parts.vanes.height', '.465 in', 0.465],
  ['arrow.parts.vanes.height', '0,465 in', 0.465],
  ['arrow.parts.vanes.height', '15/32"', 0.46875],
  ['arrow.parts.vanes.root_chord', '2¼"', 2.25],
  ['arrow.parts.point.blades.cutting_diameter', '1 1/8"', 1.125],
  ['arrow.parts.point.blades.cutting_diameter', '1,125 in', 1.125],
  ['arrow.parts.point.blades.thickness', '30 thou', 0.03],
  ['arrow.diameter', '0.246', 0.246],
  ['arrow.diameter', '17/64"', 0.265625],
  ['arrow.diameter', '6,5 mm', 6.5 / 25.4],
  ['arrow.diameter', '6.5', 6.5 / 25.4],
  ['arrow.diameter', '6.5 MM', 6.5 / 25.4],
  // Weights.
  ['arrow.mass', '454 grs', 454],
  ['arrow.mass', '454 GR', 454],
  ['arrow.mass', '454 grains', 454],
  ['arrow.mass', '454gr.', 454],
  ['arrow.mass', '454', 454],
  ['arrow.mass', '29.4 Grams', 29.4 / 0.06479891],
  ['arrow.mass', '29,4 g', 29.4 / 0.06479891],
  ['arrow.mass', '29.4', 29.4 / 0.06479891],
  ['arrow.mass', '1.04 OZ', (1.04 * 28.349523125) / 0.06479891],
  ['arrow.mass', '1,250 gr', 1250],
  ['arrow.parts.point.mass', '100', 100],
  ['arrow.parts.point.mass', '100 Grain', 100],
  ['arrow.parts.nock.mass', '9', 9],
  ['arrow.parts.shaft.mass_per_length', '9.5 GPI', 9.5],
  ['arrow.parts.shaft.mass_per_length', '9.5 gr/inch', 9.5],
  ['arrow.parts.shaft.mass_per_length', '9.5 grains per inch', 9.5],
  ['arrow.parts.shaft.deflection', '300', 300],
  // Draw weight.
  ['bow.peak_draw_weight', '70 lb', 70],
  ['bow.peak_draw_weight', '70 lbs', 70],
  ['bow.peak_draw_weight', '70 Lbs.', 70],
  ['bow.peak_draw_weight', '70 pounds', 70],
  ['bow.peak_draw_weight', '70#', 70],
  ['bow.peak_draw_weight', '70 #', 70],
  ['bow.peak_draw_weight', '70', 70],
  ['bow.peak_draw_weight', '60', 60],
  ['bow.peak_draw_weight', '27 kg', (27 * 9.80665) / 4.4482216152605],
  ['bow.peak_draw_weight', '27 Kilos', (27 * 9.80665) / 4.4482216152605],
  ['bow.peak_draw_weight', '62 1/2 lb', 62.5],
  ['bow.rating.draw_weight', '70 LB', 70],
  // Speeds.
  ['launch.speed', '281 FPS', 281],
  ['launch.speed', '281 Ft/Sec', 281],
  ['launch.speed', '281 feet per second', 281],
  ['launch.speed', '281', 281],
  ['launch.speed', '281.4', 281.4],
  ['launch.speed', '85,6 m/s', 85.6 / 0.3048],
  ['launch.speed', '85.6 M/S', 85.6 / 0.3048],
  ['bow.rating.speed', '342', 342],
  ['wind.speed', '10 MPH', 10],
  ['wind.speed', '5 kts', (5 * 1852) / 1609.344],
  ['wind.speed', '5 knots', (5 * 1852) / 1609.344],
  ['wind.speed', '8 kph', 8000 / 1609.344],
  ['wind.speed', '0', 0],
  // Ranges.
  ['marks.range', '20y', 20],
  ['marks.range', '20Y', 20],
  ['marks.range', '20 yd.', 20],
  ['marks.range', '20 yds', 20],
  ['marks.range', '20 Yards', 20],
  ['marks.range', '18 meters', 18 / 0.9144],
  ['marks.range', '18 metres', 18 / 0.9144],
  ['marks.range', '18 M', 18 / 0.9144],
  ['marks.range', "60'", 20],
  ['marks.range', '60 Feet', 20],
  ['marks.reading', '31,9', 31.9],
  ['marks.reading', '31 1/2', 31.5],
  ['marks.reading', '12,400', 12.4],
  ['marks.arrows', 'six', 6],
  ['marks.group', '3 1/2"', 3.5],
  ['marks.group', '5"', 5],
  ['arrow.parts.vanes.count', 'three', 3],
  // Which way.
  ['marks.lateral', '1" left', -1],
  ['marks.lateral', '1 in left', -1],
  ['marks.lateral', '1 in Left', -1],
  ['marks.lateral', '1 in L', -1],
  ['marks.lateral', '1"L', -1],
  ['marks.lateral', 'left 1 in', -1],
  ['marks.lateral', 'left by 1 in', -1],
  ['marks.lateral', '1 1/2" to the right', 1.5],
  ['marks.lateral', '2 in R', 2],
  ['marks.lateral', '0', 0],
  ['marks.vertical', '1 in low', -1],
  ['marks.vertical', '1" low', -1],
  ['marks.vertical', 'low 1"', -1],
  ['marks.vertical', '50 mm high', 50 / 25.4],
  ['marks.vertical', '2 in above', 2],
  ['marks.vertical', '1/2 in too low', -0.5],
  ['drops.drop', '20 in low', 20],
  ['drops.drop', '2 in high', -2],
  ['slope', '20 deg downhill', -20],
  ['slope', '20 uphill', 20],
  ['bow.cant', '2° left', -2],
  ['latitude', '45 N', 45],
  ['latitude', '33 deg south', -33],
  ['wind.from', 'left', 270],
  ['wind.from', 'Right', 90],
  ['wind.from', 'ahead', 0],
  ['wind.from', 'from behind', 180],
  ['wind.from', "9 o'clock", 270],
  ['wind.from', '90', 90],
  ['azimuth', 'NE', 45],
  // Angles.
  ['arrow.parts.vanes.angle', '2.5', 2.5],
  ['arrow.parts.vanes.angle', '2,5°', 2.5],
  ['arrow.parts.vanes.angle', '1 1/2 degrees', 1.5],
  // Air.
  ['air.temperature', '68 deg F', 68],
  ['air.temperature', '68 f', 68],
  ['air.temperature', '68°F', 68],
  ['air.temperature', '68', 68],
  ['air.temperature', '20 Celsius', 68],
  ['air.pressure', '29.9 in Hg', 29.9],
  ['air.pressure', '29.92 inhg', 29.92],
  ['air.pressure', '29.92"', 29.92],
  ['air.pressure', '29.92', 29.92],
  ['air.pressure', '1013.25 mb', 101_325 / 3386.388640341],
  ['air.pressure', '1013.25', 101_325 / 3386.388640341],
  ['air.humidity', '45', 45],
  ['air.humidity', '45%', 45],
  ['air.humidity', '45 percent', 45],
  ['air.humidity', '0.45', 45],
  ['air.altitude', '1,250 ft', 1250],
  ['air.altitude', "800'", 800],
  ['air.altitude', '12 500 ft', 12_500],
  ['air.altitude', '0', 0],
];

describe('what has one meaning is read', () => {
  it.each(READ)('%s: %s is %d in the unit of its limits', (key, typed, value) => {
    const { refusal, ...read } = readQuantity(key, typed);
    expect(refusal).toBeUndefined();
    const found = 'value' in read ? fromSi(Number(read.value), LIMITS[key].unit) : Number.NaN;
    // Relative: the rounding of a few factors; temperatures carry an offset of 255 K.
    expect(Math.abs(found - value)).toBeLessThan(1e-9 * Math.max(1, Math.abs(value)));
  });

  it('in a hundred and twenty ways and more', () => expect(READ.length).toBeGreaterThan(120));
});

describe('what was taken to be meant is kept, and nothing where it is what was typed', () => {
  it.each([
    ['bow.draw_length', '28 1/2 in', '28.5 in'],
    ['bow.draw_length', '29 IN', undefined],
    ['bow.draw_length', '29"', undefined],
    ['bow.draw_length', '28.5 in', undefined],
    ['bow.peak_draw_weight', '70#', '70 lbf'],
    ['launch.speed', '281', '281 fps'],
    ['launch.speed', '281 FPS', undefined],
    ['marks.lateral', '1" left', '-1 in'],
    ['marks.lateral', '1 1/2" left', '-1.5 in'],
    ['marks.vertical', '50 mm high', '50 mm'],
    ['wind.from', 'left', '270 deg'],
    ['air.humidity', '45', '45 %'],
    ['air.altitude', '1,250 ft', '1250 ft'],
    ['marks.reading', '31.9', undefined],
    ['marks.reading', '31,9', '31.9'],
    ['air.pressure', '29.92"', '29.92 inHg'],
  ] as const)('%s: %s is read as %s', (key, typed, readAs) => {
    const read = readQuantity(key, typed);
    expect(read.refusal).toBeUndefined();
    expect('readAs' in read ? read.readAs : undefined).toBe(readAs);
  });
});

describe('what may be two things is refused, with both of them', () => {
  it.each([
    ['launch.speed', '85', '"85 fps" or "85 m/s"'],
    ['marks.range', '60', '"60 yd" or "60 m"'],
    ['air.altitude', '7.000 ft', '"7000 ft" or "7.0 ft"'],
    ['air.altitude', '2.350m', '"2350m" or "2.4m"'],
    ['air.altitude', '1,250', '"1250 ft" or "1250 m" or "1.25 ft" or "1.25 m"'],
    ['air.temperature', '15', '"15 degF" or "15 degC"'],
    ['marks.lateral', '1L', '"-1 in" or "-1 mm" or "-1 cm"'],
    ['marks.lateral', '1 left', '"-1 in" or "-1 mm" or "-1 cm"'],
    ['marks.reading', '1,250', '"1250" or "1.25"'],
    ['wind.speed', '5', '"5 mph" or "5 m/s" or "5 km/h"'],
    ['marks.lateral', '-1 in left', '"-1 in" or "1 in"'],
    ['bow.peep_height', '33', 'a value within the limits, such as "4.6 in"'],
    ['bow.draw_length', '28½', '"28.5 in" or "28.5 cm"'],
    ['bow.draw_length', '28½ inhces', '"28.5 inches"'],
    ['bow.draw_length', '29 yd', '"29 in"'],
    ['launch.speed', '278-284 fps', '"281 fps", the mean of the two'],
    ['launch.speed', '281 ± 2 fps', '"281 fps", and the uncertainty under the key that ends in _sd'],
  ] as const)('%s: %s, write %s', (key, typed, write) =>
    expect(readQuantity(key, typed).refusal?.write).toBe(write),
  );
});
