import { describe, expect, it } from 'vitest';
import { EXAMPLE } from './example-text.ts';
import { ordersOf } from './problems-of.ts';

const SHAPES =
  'Write "shape: shield", "shape: parabolic" or "shape: low" together with length and height, or else "tip_chord"';
const BAROMETER =
  'Write "pressure" for what a barometer on the spot shows, or "sea_level_pressure" for what a weather report gives';
const WINDAGE = 'Write "lateral" for how far left (-) or right (+) the group was, "reading" for the sight';
const ELEVATION = 'Write "vertical" for how far low (-) or high (+) the group was, "reading" for the sight';
const HEADS = 'Write "field" or "bullet" or "blunt" or "mechanical" or "fixed_blade"';
const NOTE = 'Move it behind a # to keep it as a note: quillpath has no use for it';

/** What is put in place of what, and the orders that must be given; none where it has one meaning and is read. */
const SLIPS: readonly [was: string, is: string, ...orders: string[]][] = [
  // Sections of the first evening's table of wrong advice: read now, or answered with the right thing.
  ['lateral: -1 in', 'lateral: left 1 in'],
  ['altitude: 250 m', 'altitude: 1,250 ft'],
  [
    'altitude: 250 m',
    'altitude: 1,250',
    'air.altitude: Write "1250 ft" or "1250 m" or "1.25 ft" or "1.25 m"',
  ],
  ['root_chord: 2.1 in', 'length: 2.1 in'],
  ['angle: 3 deg', 'offset: 2 deg'],
  ['  hand: right', '  rating: 342 fps'],
  ['travel_per_unit: 1 mm', 'travel_per_unit: 0,5 mm'],
  [
    'travel_per_unit: 1 mm',
    'travel_per_unit: 500 mm',
    'sight.scale.travel_per_unit: Write a value within the limits, such as "1 mm"',
  ],
  ['lateral: -1 in', 'lateral: 1L', 'marks.1.lateral: Write "-1 in" or "-1 mm" or "-1 cm"'],
  ['temperature: 59 degF', 'temperature: 68 deg F'],
  // A key in the wrong place is sent to the right one.
  [
    '  balance: 17.9 in\n',
    '  balance: 17.9 in\n  spine: 300\n',
    'arrow.spine: Keep the one that is right and move the other behind a #',
  ],
  ['launch: {', 'launch: { draw_length: 29 in,', 'launch.draw_length: Move it under "bow:" or "bow.rating:"'],
  ['launch: {', 'launch: { temperature: 59 F,', 'launch.temperature: Move it under "air:"'],
  ['wind: {', 'wind: { altitude: 250 m,', 'wind.altitude: Move it under "air:"'],
  ['air: {', 'air: { latitude: 45 deg,', 'air.latitude: Move it to the top of the file'],
  ['launch: {', 'launch: { zero_range: 20 yd,', 'launch.zero_range: Move it under "sight:"'],
  ['  hand: right', '  peep_to_pin: 33 in', 'bow.peep_to_pin: Move it under "sight:"'],
  ['  zero_range: 20 yd', '  brace_height: 6.5 in', 'sight.brace_height: Move it under "bow:"'],
  ['  zero_range: 20 yd', '  travel_ratio: 1.5', 'sight.travel_ratio: Move it under "sight.tape:"'],
  ['  zero_range: 20 yd', '  at_zero: 12.4', 'sight.at_zero: Move it under "sight.scale:"'],
  ['  zero_range: 20 yd', '  reading: 12.4', 'sight.reading: Move it under "marks:"'],
  [
    'insert: { mass: 20 gr,',
    'insert: { mass: 20 gr, deflection: 300,',
    'arrow.parts.insert.deflection: Move it under "arrow.parts.shaft:"',
  ],
  [
    'insert: { mass: 20 gr,',
    'insert: { mass: 20 gr, gpi: 9.5,',
    'arrow.parts.insert.gpi: Move it under "arrow.parts.shaft:"',
  ],
  [
    'shape: field',
    'shape: field, cutting_diameter: 1.1 in',
    'arrow.parts.point.cutting_diameter: Move it under "arrow.parts.point.blades:"',
  ],
  [
    '  hand: right',
    '  hand: right\n  velocity: 281 fps',
    'bow.velocity: Move it under "bow.rating:" or "bow.chronographed:" or "launch:" or "speeds:"',
  ],
  ['  hand: right', '  hand: right\n  measured_at: 3 ft', 'bow.measured_at: Move it under "launch:"'],
  ['title: Ridge camp, 452 grain build', 'humidity: 50 %', 'humidity: Move it under "air:"'],
  [
    'title: Ridge camp, 452 grain build',
    'draw weight: 68 lb',
    'draw weight: Move it under "bow:" or "bow.rating:"',
  ],
  ['title: Ridge camp, 452 grain build', 'spine: 300', 'spine: Move it under "arrow.parts.shaft:"'],
  ['title: Ridge camp, 452 grain build', 'point: 100 gr', 'point: Move it under "arrow.parts:"'],
  // What may be two things is asked.
  [
    '  hand: right',
    '  weight: 8 lb',
    'bow.weight: Write "peak_draw_weight" for the draw weight; the mass of the bow itself is not used',
  ],
  ['pressure: 29.92 inHg', 'barometer: 29.92', `air.barometer: ${BAROMETER}`],
  ['lateral: -1 in', 'windage: -1 in', `marks.1.windage: ${WINDAGE}`],
  ['lateral: -1 in', 'elevation: -1 in', `marks.1.elevation: ${ELEVATION}`],
  ['turn: right', 'turn: right, profile: shield', `arrow.parts.vanes.profile: ${SHAPES}`],
  ['turn: right', 'turn: right, shape: shield', `arrow.parts.vanes.shape: ${SHAPES}`],
  ['shape: field', 'shape: broadhead', `arrow.parts.point.shape: ${HEADS}`],
  ['speed: 281 fps', 'speed: 85', 'launch.speed: Write "85 fps" or "85 m/s"'],
  ['zero_range: 20 yd', 'zero_range: 20', 'sight.zero_range: Write "20 yd" or "20 m"'],
  ['temperature: 59 degF', 'temperature: 15', 'air.temperature: Write "15 degF" or "15 degC"'],
  ['angle: 3 deg, turn: right', 'helical: 3 deg right, turn: left', 'arrow.parts.vanes.angle: Write "3 deg"'],
  // No measurement is thrown away.
  [
    '  balance: 17.9 in',
    '  balance: 17.9 in\n  foc: 12 %',
    'arrow.foc: Move it behind a #: front of centre follows from the parts, and check shows it',
  ],
  [
    'launch: {',
    'launch: { kinetic energy: 79 ft lb,',
    'launch.kinetic energy: Move it behind a #: it follows from mass and speed, and fly shows it',
  ],
  ['  hand: right', '  hand: right\n  let_off: 80 %', `bow.let_off: ${NOTE}`],
  ['  hand: right', '  hand: right\n  axle_to_axle: 33 in', `bow.axle_to_axle: ${NOTE}`],
  [
    '  zero_range: 20 yd',
    '  zero_range: 20 yd\n  pins: 5',
    'sight.pins: Write "[20 yd, 30 yd, 40 yd]", the ranges that your pins are set for',
  ],
  [
    'nock: { mass: 10 gr }',
    'nock: { mass: 10 gr }\n    wrap: 8 gr',
    'arrow.parts.wrap: Write it as "others: [{ name: wrap, mass: 8 gr, from_nock: 4 in }]" with your numbers',
  ],
  [
    '  mass: 452 gr ',
    '  mass: 452 gr\n  weight: 460 gr ',
    'arrow.weight: Keep the one that is right and move the other behind a #',
  ],
  // No wrong number is put in.
  ['brace_height: 6.5 in', 'brace_height: 6,5 inchs', 'bow.brace_height: Write "6.5 inch"'],
  ['brace_height: 6.5 in', 'brace_height: 6 1/2 inchs', 'bow.brace_height: Write "6.5 inch"'],
  ['draw_length: 29 in', 'draw_length: 29 1/2', 'bow.draw_length: Write "29.5 in" or "29.5 cm"'],
  ['draw_length: 29 in', 'draw_length: 28-30 in', 'bow.draw_length: Write "29 in", the mean of the two'],
  ['  mass: 452 gr ', '  mass: 4,52 gr ', 'arrow.mass: Write a value within the limits, such as "452 gr"'],
  ['  mass: 452 gr ', '  mass: 452 lb ', 'arrow.mass: Write "452 gr"'],
  ['speed: 281 fps', 'speed: 281 ft', 'launch.speed: Write "281 fps"'],
  [
    'mass_per_length: 9.5 gpi',
    'mass_per_length: 9.5 gr',
    'arrow.parts.shaft.mass_per_length: Write "9.5 gpi"',
  ],
  ['lateral: -1 in', 'lateral: -1 in left', 'marks.1.lateral: Write "-1 in" or "1 in"'],
  ['lateral: -1 in', 'lateral: 1 in low', 'marks.1.lateral: Write "vertical: -1 in" in its place'],
  ['humidity: 50 %', 'humidity: 150', 'air.humidity: Write a value within the limits, such as "50 %"'],
  ['from: 90 deg', 'from: the north', 'wind.from: Write a value within the limits, such as "90 deg"'],
  ['count: 3', 'count: 3.5', 'arrow.parts.vanes.count: Write "4"'],
  ['  mass: 452 gr ', '  mass: about 460 gr ', 'arrow.mass: Write "460 gr"'],
  ['  mass: 452 gr ', '  mass: ~460 gr ', 'arrow.mass: Write "460 gr"'],
  ['  mass: 452 gr ', '  mass: heavy ', 'arrow.mass: Write a value within the limits, such as "452 gr"'],
];

describe('what must be said of a slip', () => {
  it.each(SLIPS)('%j as %j', (was, is, ...orders) => {
    const text = EXAMPLE.replace(was, is);
    expect(text).not.toBe(EXAMPLE);
    expect(ordersOf(text)).toEqual(orders);
  });

  it('of sixty slips', () => expect(SLIPS.length).toBeGreaterThanOrEqual(60));
});
