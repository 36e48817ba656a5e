import type { UnitSystem } from '../quantities/display-units.ts';
import { type Edit, withValues } from './write.ts';

export interface StarterOptions {
  readonly title?: string | undefined;
  /** Which units the file is written in; any unit may replace any other of its kind later. */
  readonly units: UnitSystem;
  /** What is known already. */
  readonly values?: readonly Edit[] | undefined;
}

/** A commented setup file of an invented hunting bow, in which everything that must be measured is explained. */
export function starterSetup({ title, units, values = [] }: StarterOptions): string {
  const named: readonly Edit[] = title === undefined ? [] : [{ path: ['title'], value: title }];
  return withValues(starterText(units), [...named, ...values]);
}

function starterText(units: UnitSystem): string {
  /** One line of the file: key and value, then its comment in a column. */
  const line = (code: string, comment: string) => `${code.padEnd(38)}  # ${comment}`;
  const or = (imperial: string, metric: string) => (units === 'imperial' ? imperial : metric);
  return `# A setup: one bow, one arrow, one sight. Every quantity is a number with its unit, in any unit of its kind.
# What has a # in front is optional: take the # away to use it. The values are an invented bow: put yours in their place.
# A key with _sd after it holds the standard uncertainty of the key without, as in speed_sd; check names those without effect.

title: My bow

bow:
${line(`  peep_height: ${or('4.6 in', '117 mm')}`, 'NEEDED. Eye above the arrow at full draw, square to the arrow.')}
${line(`  draw_length: ${or('29 in', '737 mm')}`, `To the deepest point of the grip, plus ${or('1.75 in', '44 mm')}.`)}
${line(`  brace_height: ${or('6.5 in', '165 mm')}`, 'String to the deepest point of the grip, bow at rest.')}
${line(`  # peak_draw_weight: ${or('68 lbf', '302 N')}`, 'For the check that the arrow is heavy enough.')}
${line('  # hand: right', 'The hand that draws: right or left.')}
${line(`  # rating: { speed: ${or('335 fps', '102 m/s')} }`, 'As the maker states it; launch speed may then be: rated.')}
${line(`  # chronographed: [{ arrow_mass: ${or('560 gr, speed: 255 fps', '36 g, speed: 78 m/s')} }]`, 'Other arrows, for compare.')}

arrow:
${line(`  diameter: ${or('0.246 in', '6.25 mm')}`, 'NEEDED. Of the shaft, outside.')}
${line(`  mass: ${or('452 gr', '29.3 g')}`, 'NEEDED, from a grain scale; or the parts below, added up.')}
${line(`  # balance: ${or('17.9 in', '455 mm')}`, 'Balance point from the groove of the nock.')}
${line('  # drag_coefficient: 2.4', 'On the cross-section of the shaft; replaces the build-up from parts.')}
  # The parts add what mass and diameter cannot tell: drag from their shapes, spin, drift and stability.
  parts:
    shaft:
${line(`      length: ${or('28.5 in', '724 mm')}`, 'The tube alone, as cut.')}
${line(`      mass_per_length: ${or('9.5 gpi', '24.2 g/m')}`, 'From the table of the shaft.')}
${line(`      # inner_diameter: ${or('0.166 in', '4.22 mm')}`, 'The bore.')}
${line('      # deflection: 300', 'The spine number on the shaft.')}
${line(`    insert: { mass: ${or('20 gr', '1.3 g')} }`, 'Glued into the front.')}
${line(`    point: { mass: ${or('125 gr', '8.1 g')}, shape: field }`, 'field, bullet, blunt, mechanical or fixed_blade.')}
${line(`    nock: { mass: ${or('10 gr', '0.65 g')} }`, 'With its light, if it has one.')}
    vanes:
${line('      count: 3', 'How many.')}
${line(`      mass: ${or('7 gr', '0.45 g')}`, 'Of ONE vane.')}
${line(`      root_chord: ${or('2.1 in', '53 mm')}`, 'Length on the shaft.')}
${line(`      tip_chord: ${or('0.9 in', '23 mm')}`, 'Length of the upper edge.')}
${line(`      height: ${or('0.5 in', '12.7 mm')}`, 'Above the shaft.')}
${line(`      from_nock: ${or('1 in', '25 mm')}`, 'Groove of the nock to the rear end of the vane.')}
${line('      angle: 3 deg', 'Of the vane to the shaft.')}
${line('      turn: right', 'right: the arrow turns clockwise seen from behind; left; none.')}
${line(`    # others: [{ name: wrap, mass: ${or('8 gr, from_nock: 4 in', '0.5 g, from_nock: 100 mm')} }]`, 'Anything else.')}

launch:
${line(`  speed: ${or('281 fps', '85.6 m/s')}`, 'NEEDED. From a chronograph, mean of a few arrows.')}
${line(`  measured_at: ${or('3 ft', '0.9 m')}`, 'Middle of the chronograph ahead of the grip.')}
${line(`  # speed_sd: ${or('1.5 fps', '0.5 m/s')}`, 'How far to trust it; this is the default.')}

sight:
${line(`  peep_to_pin: ${or('33 in', '838 mm')}`, 'NEEDED. Peep to pin at full draw.')}
${line(`  zero_range: ${or('20 yd', '20 m')}`, 'Where it is sighted in, and the tape begins.')}
${line('  # scale:', 'The numbers on the sight; needed for marks and readings.')}
${line(`  #   travel_per_unit: ${or('1 mm', '1 mm')}`, 'Travel of the pin for one unit; unknown lets two marks measure it.')}
${line('  #   increases: down', 'down when the numbers grow as the pin goes down; up.')}
${line('  #   at_zero: 12.4', 'The reading at zero_range.')}
${line('  # tape: { travel_ratio: 1 }', 'Travel of the tape over travel of the pin.')}

${line(`# air: { temperature: ${or('56 degF, pressure: 29.05 inHg', '13 degC, pressure: 984 hPa')}, humidity: 50 %, altitude: ${or('820 ft', '250 m')} }`, 'As a station on the spot reads it.')}
${line(`# wind: { speed: ${or('5 mph', '2 m/s')}, from: 90 deg }`, '0 deg from ahead, 90 deg from the right.')}
${line('# latitude: 45 deg', 'For the turning of the Earth, and for gravity.')}

# What was shot: the range, what the scale read, how many arrows, the size of the group, and how far its middle was off
# (right and high are positive). Two marks, one of them far, make the tape much better than none.
# marks:
#   - { range: ${or('20 yd', '20 m')}, reading: 12.4, arrows: 3, group: ${or('1.5 in', '40 mm')}, lateral: ${or('0 in', '0 mm')}, vertical: ${or('0 in', '0 mm')} }
#   - { range: ${or('60 yd', '60 m')}, reading: 31.9, arrows: 6, group: ${or('5 in', '130 mm')}, lateral: ${or('-1 in', '-25 mm')} }

# What else might be shot from this bow: each build names only what differs. "quillpath compare" sets them side by side.
# builds:
#   - { name: heavier point, arrow: { parts: { point: { mass: ${or('175 gr', '11.3 g')} } } } }
`;
}
