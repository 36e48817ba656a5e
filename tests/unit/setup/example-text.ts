/** The invented setup that the tests of the reader start from: every section is in it. */
export const EXAMPLE = `title: Ridge camp, 452 grain build
bow:
  draw_length: 29 in            # trade definition
  brace_height: 6.5 in
  peak_draw_weight: 68 lbf
  peep_height: 4.6 in
  hand: right
arrow:
  diameter: 0.246 in
  mass: 452 gr                  # measured total
  balance: 17.9 in
  drag_coefficient: 2.4
  parts:
    shaft: { length: 28.5 in, inner_diameter: 0.166 in, mass_per_length: 9.5 gpi, deflection: 300 }
    insert: { mass: 20 gr, length: 1 in }
    point: { mass: 125 gr, shape: field, length: 1.3 in }
    nock: { mass: 10 gr }
    vanes: { count: 3, mass: 7 gr, root_chord: 2.1 in, tip_chord: 0.9 in, height: 0.5 in, thickness: 0.03 in,
             from_nock: 1 in, angle: 3 deg, turn: right }
    others: [{ name: wrap, mass: 8 gr, from_nock: 4 in }]
launch: { speed: 281 fps, speed_sd: 1.5 fps, measured_at: 3 ft }
air: { temperature: 59 degF, pressure: 29.92 inHg, humidity: 50 %, altitude: 250 m }
wind: { speed: 5 mph, from: 90 deg }
sight:
  peep_to_pin: 33 in
  zero_range: 20 yd
  scale: { travel_per_unit: 1 mm, increases: down, at_zero: 12.4 }
  tape: { travel_ratio: 1 }
marks:
  - { range: 20 yd, reading: 12.4, arrows: 3, group: 1.5 in, lateral: 0 in, vertical: 0 in }
  - { range: 60 yd, reading: 31.9, arrows: 6, group: 5 in, lateral: -1 in }
`;

/** Only what marks need. */
export const SMALLEST = `bow: { peep_height: 4.6 in }
arrow: { diameter: 0.246 in, mass: 452 gr }
launch: { speed: 281 fps }
sight: { peep_to_pin: 33 in }
`;
