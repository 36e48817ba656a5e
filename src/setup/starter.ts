import type { UnitSystem } from '../quantities/display-units.ts';
import type { Edit } from './edit.ts';
import { whatIs } from './keys.ts';
import { withValues } from './write.ts';

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

/** What a key is, as a sentence of its own without the full stop. */
function sentence(key: string): string {
  const what = whatIs(key).replaceAll('`', '');
  return what.slice(0, 1).toUpperCase() + what.slice(1);
}

/** One line of the file: key and value, then its comment in a column. */
const commented = (code: string, comment: string): string => `${code.padEnd(38)}  # ${comment}.`;

/** A line with the meaning of its key behind it, and whatever else a beginner needs to know of it. */
const line = (code: string, key: string, more = ''): string => commented(code, sentence(key) + more);
const needed = (code: string, key: string, more = ''): string =>
  commented(code, `NEEDED. ${sentence(key)}${more}`);

function starterText(units: UnitSystem): string {
  const or = (imperial: string, metric: string) => (units === 'imperial' ? imperial : metric);
  const point = `    point: { mass: ${or('125 gr', '8.1 g')}, shape: field }`;
  const wrap = or('8 gr, from_nock: 4 in', '0.5 g, from_nock: 100 mm');
  const other = or('560 gr, speed: 255 fps', '36 g, speed: 78 m/s');
  const temperature = or('56 degF, pressure: 29.05 inHg', '13 degC, pressure: 984 hPa');
  const air = `# air: { temperature: ${temperature}, humidity: 50 %, altitude: ${or('820 ft', '250 m')} }`;
  const near = `range: ${or('20 yd', '20 m')}, reading: 12.4, arrows: 3, group: ${or('1.5 in', '40 mm')}`;
  const nearMiss = `lateral: ${or('0 in', '0 mm')}, vertical: ${or('0 in', '0 mm')}`;
  const far = `range: ${or('60 yd', '60 m')}, reading: 31.9, arrows: 6, group: ${or('5 in', '130 mm')}`;
  return `# A setup: one bow, one arrow, one sight. Every quantity is a number with its unit, in any unit of its kind.
# Lines with a # in front are optional: take the # away to use them. The values are of an invented bow: replace them with yours.
# A key with _sd after it holds the standard uncertainty of the key without, as in speed_sd; check names those without effect.

title: My bow

bow:
${needed(`  peep_height: ${or('4.6 in', '117 mm')}`, 'bow.peep_height')}
${line(`  draw_length: ${or('29 in', '737 mm')}`, 'bow.draw_length')}
${line(`  brace_height: ${or('6.5 in', '165 mm')}`, 'bow.brace_height')}
${line(`  # peak_draw_weight: ${or('68 lbf', '302 N')}`, 'bow.peak_draw_weight')}
${line('  # hand: right', 'bow.hand', ': right or left')}
${line(`  # rating: { speed: ${or('335 fps', '102 m/s')} }`, 'bow.rating.speed', '; launch speed may then be: rated')}
${line(`  # chronographed: [{ arrow_mass: ${other} }]`, 'bow.chronographed')}

arrow:
${needed(`  diameter: ${or('0.246 in', '6.25 mm')}`, 'arrow.diameter')}
${needed(`  mass: ${or('452 gr', '29.3 g')}`, 'arrow.mass', '; or the parts below, added up')}
${line(`  # balance: ${or('17.9 in', '455 mm')}`, 'arrow.balance')}
${commented('  # drag_coefficient: 2.4', "On the shaft's cross-section; replaces what is built up from the parts")}
  # The parts add what mass and diameter cannot give: drag from their shapes, spin, drift and stability.
  parts:
    shaft:
${line(`      length: ${or('28.5 in', '724 mm')}`, 'arrow.parts.shaft.length')}
${line(`      mass_per_length: ${or('9.5 gpi', '24.2 g/m')}`, 'arrow.parts.shaft.mass_per_length')}
${line(`      # inner_diameter: ${or('0.166 in', '4.22 mm')}`, 'arrow.parts.shaft.inner_diameter')}
${line('      # deflection: 300', 'arrow.parts.shaft.deflection')}
${line(`    insert: { mass: ${or('20 gr', '1.3 g')} }`, 'arrow.parts.insert')}
${line(point, 'arrow.parts.point', ': field, bullet, blunt, mechanical or fixed_blade')}
${line(`    nock: { mass: ${or('10 gr', '0.65 g')} }`, 'arrow.parts.nock.mass')}
    vanes:
${line('      count: 3', 'arrow.parts.vanes.count')}
${line(`      mass: ${or('7 gr', '0.45 g')}`, 'arrow.parts.vanes.mass')}
${line(`      root_chord: ${or('2.1 in', '53 mm')}`, 'arrow.parts.vanes.root_chord')}
${line(`      tip_chord: ${or('0.9 in', '23 mm')}`, 'arrow.parts.vanes.tip_chord')}
${line(`      height: ${or('0.5 in', '12.7 mm')}`, 'arrow.parts.vanes.height')}
${line(`      from_nock: ${or('1 in', '25 mm')}`, 'arrow.parts.vanes.from_nock')}
${line('      angle: 3 deg', 'arrow.parts.vanes.angle')}
${line('      turn: right', 'arrow.parts.vanes.turn', '; or left, or none')}
${line(`    # others: [{ name: wrap, mass: ${wrap} }]`, 'arrow.parts.others')}

launch:
${needed(`  speed: ${or('281 fps', '85.6 m/s')}`, 'launch.speed')}
${line(`  measured_at: ${or('3 ft', '0.9 m')}`, 'launch.measured_at')}
${commented(`  # speed_sd: ${or('1.5 fps', '0.5 m/s')}`, 'How far off the speed may be; this is the default')}

sight:
${needed(`  peep_to_pin: ${or('33 in', '838 mm')}`, 'sight.peep_to_pin')}
${line(`  zero_range: ${or('20 yd', '20 m')}`, 'sight.zero_range')}
${line('  # scale:', 'sight.scale')}
${line('  #   travel_per_unit: 1 mm', 'sight.scale.travel_per_unit')}
${line('  #   increases: down', 'sight.scale.increases')}
${line('  #   at_zero: 12.4', 'sight.scale.at_zero')}
${line('  # tape: { travel_ratio: 1 }', 'sight.tape.travel_ratio')}

${line(air, 'air')}
${line(`# wind: { speed: ${or('5 mph', '2 m/s')}, from: 90 deg }`, 'wind.from')}
${line('# latitude: 45 deg', 'latitude')}

# What was shot: the range, what the scale read, how many arrows, the size of the group, and how far its middle was off
# (right and high are positive). Two marks, one of them far, make the tape much better than none.
# marks:
#   - { ${near}, ${nearMiss} }
#   - { ${far}, lateral: ${or('-1 in', '-25 mm')} }

# Other arrows for this bow: each build names only what differs. "quillpath compare" sets them side by side.
# builds:
#   - { name: heavier point, arrow: { parts: { point: { mass: ${or('175 gr', '11.3 g')} } } } }
`;
}
