import { describe, expect, it } from 'vitest';
import { EXAMPLE, SMALLEST } from '../example-text.ts';
import { problemsOf } from '../problems-of.ts';

const pathsOf = (text: string) => problemsOf(text).map(({ path }) => path);
/** The full example with one piece of its text replaced. */
const changed = (was: string, is: string) => {
  expect(EXAMPLE).toContain(was);
  return EXAMPLE.replace(was, is);
};

it('the example agrees with itself', () => expect(pathsOf(EXAMPLE)).toEqual([]));

describe('values that cannot both be true are refused', () => {
  it.each([
    ['a balance point ahead of the arrow', 'balance: 17.9 in', 'balance: 30 in', 'arrow.balance'],
    [
      'a bore as wide as the shaft',
      'inner_diameter: 0.166 in',
      'inner_diameter: 0.3 in',
      'arrow.parts.shaft.inner_diameter',
    ],
    [
      'a collar no wider than the shaft',
      'nock: { mass: 10 gr }',
      'nock: { mass: 10 gr }\n    collar: { mass: 9 gr, diameter: 0.24 in }',
      'arrow.parts.collar.diameter',
    ],
    [
      'an upper edge longer than the base',
      'tip_chord: 0.9 in',
      'tip_chord: 3 in',
      'arrow.parts.vanes.tip_chord',
    ],
    ['vanes at an angle that turn neither way', ', turn: right }', ' }', 'arrow.parts.vanes.turn'],
    ['a head of fixed blades without them', 'shape: field', 'shape: fixed_blade', 'arrow.parts.point.blades'],
    [
      'blades on another point',
      'shape: field',
      'blades: { count: 3, length: 1 in, cutting_diameter: 1 in, thickness: 0.04 in }',
      'arrow.parts.point.blades',
    ],
    ['parts as heavy as the arrow', 'mass: 125 gr', 'mass: 430 gr', 'arrow.mass'],
    ['two pressures', 'humidity: 50 %', 'sea_level_pressure: 30 inHg', 'air.sea_level_pressure'],
    [
      'a reduced pressure without the altitude',
      'pressure: 29.92 inHg, humidity: 50 %, altitude: 250 m',
      'sea_level_pressure: 30 inHg',
      'air.altitude',
    ],
    [
      'readings of no scale',
      '  scale: { travel_per_unit: 1 mm, increases: down, at_zero: 12.4 }\n',
      '',
      'sight.scale',
    ],
    [
      'a mark that says nothing',
      'reading: 31.9, arrows: 6, group: 5 in, lateral: -1 in',
      'arrows: 6',
      'marks.1.reading',
    ],
    ['a vertical miss of no reading', 'reading: 31.9, arrows: 6,', 'vertical: 1 in,', 'marks.1.vertical'],
  ])('%s', (_, was, is, path) => {
    expect(pathsOf(changed(was, is))).toEqual([path]);
  });

  it('a brace height that leaves the string no way to go', () => {
    const of = (draw: string) =>
      pathsOf(
        SMALLEST.replace(
          'peep_height: 4.6 in',
          `peep_height: 4.6 in, brace_height: 9 in, draw_length: ${draw}`,
        ),
      );
    expect(of('10.74 in')).toEqual(['bow.brace_height']); // 10.74 - 1.75 - 9 < 0
    expect(of('10.76 in')).toEqual([]);
  });

  it('vanes that end ahead of the shaft', () => {
    const short = changed('balance: 17.9 in', 'length: 10 in')
      .replace('28.5 in', '9.75 in')
      .replace('9.5 gpi', '25 gpi');
    expect(pathsOf(short.replace('from_nock: 1 in', 'from_nock: 8 in'))).toEqual([
      'arrow.parts.vanes.from_nock',
    ]);
    expect(pathsOf(short.replace('from_nock: 1 in', 'from_nock: 7.8 in'))).toEqual([]); // 7.8 + 2.1 < 10
  });

  it('a mass that the parts do not add up to, unless shaft and point are weighed', () => {
    expect(pathsOf(SMALLEST.replace(', mass: 452 gr', ''))).toEqual(['arrow.mass']);
    const parts = 'parts: { shaft: { length: 28.5 in, mass_per_length: 9.5 gpi }, point: { mass: 125 gr } }';
    expect(pathsOf(SMALLEST.replace('mass: 452 gr', parts))).toEqual([]);
  });

  it('a Reynolds number that does not rise along the table', () => {
    const table = 'drag_coefficient: [{ reynolds: 20000, value: 2 }, { reynolds: 20000, value: 3 }]';
    expect(pathsOf(SMALLEST.replace('mass: 452 gr', `mass: 452 gr, ${table}`))).toEqual([
      'arrow.drag_coefficient.1.reynolds',
    ]);
  });

  it('a name that two builds have', () => {
    expect(pathsOf(`${SMALLEST}builds: [{ name: a }, { name: b }, { name: a }]`)).toEqual(['builds.2.name']);
  });
});

it('a travel per unit may be unknown, also before there are marks to measure it', () => {
  const unknown = changed('travel_per_unit: 1 mm', 'travel_per_unit: unknown');
  expect(pathsOf(unknown)).toEqual([]);
  expect(pathsOf(unknown.slice(0, unknown.indexOf('marks:')))).toEqual([]);
});

describe('totals, parts and ranges that deny one another are refused', () => {
  const airOf = (air: string) => pathsOf(`${SMALLEST}air: { ${air} }`);
  const marksOf = (scale: string, ...marks: string[]) => {
    const scaled = SMALLEST.replace('33 in }', `33 in, scale: { ${scale} } }`);
    return pathsOf(`${scaled}marks:\n${marks.map((mark) => `  - { ${mark} }\n`).join('')}`);
  };
  const blades = (wide: string) =>
    changed(
      'shape: field',
      `shape: fixed_blade, blades: { count: 3, length: 1 in, cutting_diameter: ${wide}, thickness: 0.04 in }`,
    );

  // the parts of the example add up to 28.5 x 9.5 + 20 + 125 + 10 + 3 x 7 + 8 = 454.75 gr
  it.each([
    ['mass: 452 gr', 'mass: 370 gr', []],
    ['mass: 452 gr', 'mass: 360 gr', ['arrow.mass']],
    ['mass: 452 gr', 'mass: 550 gr', ['arrow.mass']],
    ['balance: 17.9 in', 'balance: 10.8 in', ['arrow.balance']],
    ['balance: 17.9 in', 'length: 28.75 in', []],
    ['balance: 17.9 in', 'length: 31 in', ['arrow.length']],
    ['from_nock: 4 in', 'from_nock: 30 in', []],
    ['from_nock: 4 in', 'from_nock: 40 in', ['arrow.parts.others.0.from_nock']],
    ['zero_range: 20 yd', 'zero_range: 1 yd', ['sight.zero_range']],
    ['{ range: 60 yd', '{ range: 1 yd', ['marks.1.range']],
    ['arrows: 6, group: 5 in', 'arrows: 1, group: 5 in', ['marks.1.group']],
    ['drag_coefficient: 2.4', 'drag_coefficient: []', ['arrow.drag_coefficient']],
    ['    point: { mass: 125 gr, shape: field, length: 1.3 in }\n', '', ['arrow.parts.point']],
    [
      '    shaft: { length: 28.5 in, inner_diameter: 0.166 in, mass_per_length: 9.5 gpi, deflection: 300 }\n',
      '',
      ['arrow.parts.shaft'],
    ],
  ])('%s as %s: %j', (was, is, paths) => expect(pathsOf(changed(was, is))).toEqual(paths));

  it('a mass that was changed from outside the file may leave what the parts add up to', () =>
    expect(problemsOf(EXAMPLE, [{ path: ['arrow', 'mass'], value: '600 gr' }])).toEqual([]));

  it('fixed blades no wider than the shaft', () => {
    expect(pathsOf(blades('1.125 in'))).toEqual([]);
    const wide = changed('diameter: 0.246 in', 'diameter: 0.45 in').replace(
      'shape: field',
      blades('0.42 in').match(/shape: fixed.*? \}/)?.[0] ?? '',
    );
    expect(pathsOf(wide)).toEqual(['arrow.parts.point.blades.cutting_diameter']);
  });

  // U.S. Standard Atmosphere, 1976, from memory: 22.22 inHg at a geopotential 8000 ft
  it('a pressure that belongs to another altitude', () => {
    const text = `${SMALLEST}air: { pressure: 30.1 inHg, altitude: 8000 ft }`;
    expect(problemsOf(text)[0]?.message).toContain('at 8000 ft that is about 22.2 inHg');
    expect(problemsOf(text)[0]?.write).toContain('sea_level_pressure');
    expect(airOf('pressure: 22 inHg, altitude: 8000 ft')).toEqual([]);
    expect(airOf('sea_level_pressure: 30.1 inHg, altitude: 8000 ft')).toEqual([]);
    expect(airOf('sea_level_pressure: 27 inHg, altitude: 18000 ft')).toEqual(['air.sea_level_pressure']);
  });

  it.each([
    ['travel_per_unit: unknown, increases: down', ['40 yd', 30], ['60 yd', 20], ['sight.scale.increases']],
    ['travel_per_unit: unknown', ['40 yd', 30], ['60 yd', 20], ['sight.scale.increases']],
    ['travel_per_unit: unknown, increases: up', ['40 yd', 30], ['60 yd', 20], []],
    ['travel_per_unit: unknown, increases: down', ['40 yd', 20], ['60 yd', 20], ['marks']],
    ['travel_per_unit: 1 mm, increases: up', ['40 yd', 20], ['60 yd', 30], ['sight.scale.increases']],
    ['travel_per_unit: 1 mm, increases: down', ['40 yd', 20], ['60 yd', 30], []],
    // nearer than the turning point the pin goes the other way
    ['travel_per_unit: 1 mm, increases: down', ['5 yd', 20], ['10 yd', 13], []],
  ] as const)('readings against %s: %j, %j', (scale, [near, a], [far, b], paths) =>
    expect(marksOf(scale, `range: ${near}, reading: ${a}`, `range: ${far}, reading: ${b}`)).toEqual(paths),
  );

  const readings = (...marks: readonly (readonly [string, number])[]) =>
    problemsOf(
      `${SMALLEST.replace('33 in }', '33 in, scale: { travel_per_unit: unknown, increases: down } }')}marks:\n${marks
        .map(([range, reading]) => `  - { range: ${range}, reading: ${reading} }\n`)
        .join('')}`,
    );

  it('readings that all run the wrong way name two of them', () =>
    expect(readings(['20 yd', 14], ['60 yd', 8])[0]?.message).toContain('(14 at 20 yd, 8 at 60 yd)'));

  it('one reading that makes the scale run the wrong way is named with its line and its neighbour', () => {
    const [problem] = readings(['20 m', 14], ['40 m', 18], ['60 m', 22], ['80 m', 3]);
    expect(problem).toMatchObject({ path: 'marks.3.reading', line: SMALLEST.split('\n').length + 4 });
    expect(problem?.message).toContain('22 at 60 m and 3 at 80 m run the wrong way: the pin stands lower');
    expect(problem?.write).toContain('"increases: up"');
  });

  // From 10 to 14 yd the pin of a bow of 280 ft/s goes up: the highest is at v √(2h/g), some 13 yd.
  it('near readings that turn back the wrong way too', () =>
    expect(readings(['6 yd', 10], ['12 yd', 14])[0]?.message).toContain(
      '10 at 6 yd and 14 at 12 yd run the wrong way: the pin stands higher',
    ));
});
