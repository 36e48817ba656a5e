import { describe, expect, it } from 'vitest';
import { readSetup } from '../../../src/setup/read.ts';
import { EXAMPLE, SMALLEST } from './example-text.ts';
import { messagesOf, ordersOf, problemsOf } from './problems-of.ts';

describe('readSetup reads', () => {
  it('every section of a full file, in SI', () => {
    const setup = readSetup(EXAMPLE, 'setup.yaml');
    expect(setup.title).toBe('Ridge camp, 452 grain build');
    expect(setup.bow.draw_length).toBeCloseTo(0.7366, 12);
    expect(setup.bow.hand).toBe('right');
    expect(setup.arrow.mass).toBeCloseTo(452 * 6.479891e-5, 12);
    expect(setup.arrow.drag_coefficient).toBe(2.4);
    expect(setup.arrow.parts?.vanes?.turn).toBe('right');
    expect(setup.arrow.parts?.shaft?.deflection).toBe(300);
    expect(setup.arrow.parts?.others?.[0]?.name).toBe('wrap');
    expect(setup.launch.speed_sd).toBeCloseTo(0.4572, 12);
    expect(setup.air?.humidity).toBe(0.5);
    expect(setup.air?.altitude).toBe(250);
    expect(setup.wind?.from).toBeCloseTo(Math.PI / 2, 12);
    expect(setup.sight.scale?.travel_per_unit).toBeCloseTo(0.001, 12);
    expect(setup.marks?.map(({ reading }) => reading)).toEqual([12.4, 31.9]);
    expect(setup.marks?.[1]?.lateral).toBeCloseTo(-0.0254, 12);
  });

  it('the smallest file, without making keys up', () => {
    const setup = readSetup(SMALLEST, 'setup.yaml');
    expect(Object.keys(setup).toSorted()).toEqual(['arrow', 'bow', 'launch', 'sight']);
    expect(Object.keys(setup.bow)).toEqual(['peep_height']);
  });

  it('a file with another end of line, a byte-order mark, quoted values and a comment alone in a section', () => {
    const text = `\ufeff${SMALLEST.replace('281 fps', '"281 fps"')}marks:\n  # none yet\nair:\n`;
    const setup = readSetup(text.replaceAll('\n', '\r\n'), 'setup.yaml');
    expect(setup.launch.speed).toBeCloseTo(85.6488, 10);
    expect('marks' in setup || 'air' in setup).toBe(false);
  });

  it('a drag coefficient as a table against the Reynolds number', () => {
    const table = 'drag_coefficient: [{ reynolds: 10000, value: 1.5 }, { reynolds: 20000, value: 2.5 }]';
    const { arrow } = readSetup(SMALLEST.replace('mass: 452 gr', `mass: 452 gr, ${table}`), 'setup.yaml');
    expect(arrow.drag_coefficient).toEqual([
      { reynolds: 10000, value: 1.5 },
      { reynolds: 20000, value: 2.5 },
    ]);
  });

  it('builds that name only what differs', () => {
    const text = `${EXAMPLE}builds:\n  - { name: heavy, arrow: { parts: { point: { mass: 200 gr } } } }\n`;
    const [build] = readSetup(text, 'setup.yaml').builds ?? [];
    expect(build?.arrow?.parts?.point?.mass).toBeCloseTo(200 * 6.479891e-5, 12);
    expect(build?.arrow?.diameter).toBeUndefined();
  });

  it('a temperature uncertainty as a difference, not as a point on the scale', () => {
    const text = `${SMALLEST}air: { temperature: 59 degF, temperature_sd: 9 degF }\n`;
    expect(readSetup(text, 'setup.yaml').air?.temperature_sd).toBeCloseTo(5, 12);
  });
});

describe('readSetup replaces values from outside the file', () => {
  it('one that is there and one that is not', () => {
    const setup = readSetup(SMALLEST, 'setup.yaml', [
      { path: ['arrow', 'mass'], value: '500 gr' },
      { path: ['wind', 'speed'], value: '10 mph' },
    ]);
    expect(setup.arrow.mass).toBeCloseTo(500 * 6.479891e-5, 12);
    expect(setup.wind?.speed).toBeCloseTo(4.4704, 12);
  });

  it('an entry of a list by its number', () => {
    const setup = readSetup(EXAMPLE, 'setup.yaml', [{ path: ['marks', '1', 'range'], value: '70 yd' }]);
    expect(setup.marks?.[1]?.range).toBeCloseTo(64.008, 10);
  });

  it('and points at the command line when one of them is wrong', () => {
    const [problem] = problemsOf(SMALLEST, [{ path: ['arrow', 'mass'], value: '4 kg' }]);
    expect(problem?.line).toBe(0);
    expect(problem?.message).toMatch(/^command line {2}arrow\.mass: "4 kg" is above the limit\. A lighter/);
  });

  it.each([[[]], [['marks', '7', 'range']], [['marks', 'x']], [['bow', 'hand', 'left']]])(
    'and refuses the path %j that leads nowhere',
    (path) => {
      const problems = problemsOf(EXAMPLE, [{ path, value: '1 in' }]);
      expect(
        problems.map(({ line, reason: _, ...rest }: { line: number; reason?: string; path: string }) => [
          line,
          rest.path,
        ]),
      ).toEqual([[0, path.join('.')]]);
    },
  );

  it('and takes no key of the language for one of the file', () => {
    for (const key of ['__proto__', 'constructor', 'toString'])
      expect(problemsOf(SMALLEST, [{ path: ['bow', key], value: '1 in' }]).length).toBe(1);
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

describe('readSetup tells every problem at once', () => {
  const bad = `title: Bad one
bow:
  draw_lenght: 29 in
  brace_height: 6,5 inchs
  peak_draw_weight: 68 gr
  peep_height: -4.6 in
  hand: Rihgt
arrow:
  diamter: 0.246 in
  mass: 4 kg
  parts:
    shaft: { length: 28.5, mass_per_length: 9.5 gr }
    vanes: { count: 3.5, mass: 7 gr, root_chord: 2.1 in, tip_chord: 2.9 in, height: 0,5 inn, angle: 3 deg }
launch: { speed: 900 ft/s, speed_sd: 0 fps, measured_at: }
air: [1, 2]
wind: 5 mph
sight:
  zero_range: 20
marks:
  - { range: 20 in, reading: 12.4 mm }
  - 5
`;

  it('with line, column, key path, what was found and what to write', () => {
    expect(
      problemsOf(bad).map(({ line, column, path, found, write }) => [line, column, path, found, write]),
    ).toEqual([
      [3, 3, 'bow.draw_lenght', 'draw_lenght', 'Write "draw_length"'],
      [4, 17, 'bow.brace_height', '6,5 inchs', 'Write "6.5 inch"'],
      [5, 21, 'bow.peak_draw_weight', '68 gr', 'Write "68 lbf"'],
      [6, 16, 'bow.peep_height', '-4.6 in', 'Write a value within the limits, such as "4.6 in"'],
      [7, 9, 'bow.hand', 'Rihgt', 'Write "right"'],
      [9, 3, 'arrow.diamter', 'diamter', 'Write "diameter"'],
      [10, 9, 'arrow.mass', '4 kg', 'Write a value within the limits, such as "29.3 g"'],
      [11, 3, 'arrow.parts.point', '', expect.stringMatching(/^Add "point: /)],
      [12, 22, 'arrow.parts.shaft.length', '28.5', 'Write "28.5 in" or "28.5 cm"'],
      [12, 45, 'arrow.parts.shaft.mass_per_length', '9.5 gr', 'Write "9.5 gpi"'],
      [13, 5, 'arrow.parts.vanes.turn', '', expect.stringMatching(/^Add "turn: right" under "vanes:"/)],
      [13, 21, 'arrow.parts.vanes.count', '3.5', 'Write "4"'],
      [13, 69, 'arrow.parts.vanes.tip_chord', '2.9 in', 'Swap the two, or measure them again'],
      [13, 85, 'arrow.parts.vanes.height', '0,5 inn', 'Write "0.5 in"'],
      [14, 18, 'launch.speed', '900 ft/s', 'Write a value within the limits, such as "281 fps"'],
      [14, 38, 'launch.speed_sd', '0 fps', 'Write a small one, such as "0.4 fps"'],
      [14, 45, 'launch.measured_at', 'measured_at', 'Write "3 ft"'],
      [15, 6, 'air', 'air', 'Write its keys on the lines below it'],
      [16, 7, 'wind', '5 mph', 'Write its keys on the lines below it'],
      [17, 1, 'sight.peep_to_pin', '', 'Add "peep_to_pin: 33 in" under "sight:"'],
      [17, 1, 'sight.scale', '', expect.stringMatching(/^Add "scale: /)],
      [18, 15, 'sight.zero_range', '20', 'Write "20 yd" or "20 m"'],
      [20, 14, 'marks.0.range', '20 in', 'Write "20 yd"'],
      [20, 30, 'marks.0.reading', '12.4 mm', 'Write "12.4"'],
      [21, 5, 'marks.1', '5', 'Write its keys on the lines below it'],
    ]);
  });

  it('each as one line that a person can follow', () => {
    expect(messagesOf(bad)).toContain(
      'setup.yaml:12:22  arrow.parts.shaft.length: "28.5" has no unit, and more than one would fit. ' +
        'Allowed: a length between 8 and 42 in. Write "28.5 in" or "28.5 cm".',
    );
    expect(messagesOf(bad)).toContain(
      'setup.yaml:17:1  sight.peep_to_pin is missing. ' +
        'Allowed: a length between 10 and 60 in. Add "peep_to_pin: 33 in" under "sight:".',
    );
  });

  it('and what every missing key of an empty mapping needs', () => {
    expect(ordersOf('{}').toSorted()).toEqual([
      'arrow.diameter: Add "diameter: 0.246 in" under "arrow:"',
      'arrow.mass: Add "mass: 452 gr" under "arrow:"',
      'bow.peep_height: Add "peep_height: 4.6 in" under "bow:"',
      'launch.speed: Add "speed: 281 fps" under "launch:"',
      'sight.peep_to_pin: Add "peep_to_pin: 33 in" under "sight:"',
    ]);
  });

  it('and of a word the nearest of those that are known', () => {
    const of = (keys: string) =>
      ordersOf(SMALLEST.replace('452 gr', `452 gr, ${keys}`).replace('4.6 in', `4.6 in, hand: rihgt`));
    expect(of('boundary_layer: turbulant')).toEqual([
      'bow.hand: Write "right"',
      'arrow.boundary_layer: Write "turbulent"',
    ]);
    expect(of('boundary_layer: smooth')).toContain(
      'arrow.boundary_layer: Write "turbulent" or "laminar" or "transition"',
    );
  });

  it('and of a drag table its own faults, not those of a number', () => {
    const text = SMALLEST.replace(
      'mass: 452 gr',
      'mass: 452 gr, drag_coefficient: [{ reynolds: 2 m, value: 2 }]',
    );
    expect(problemsOf(text).map(({ path }) => path)).toEqual(['arrow.drag_coefficient.0.reynolds']);
  });
});

describe('readSetup refuses nonsense with the limit and its reason', () => {
  it.each([
    [
      'mass: 452 gr',
      'mass: 4 kg',
      'arrow.mass',
      'between 6.48 and 97.2 g',
      'limit. A lighter arrow would wreck a bow, and nobody shoots a heavier one. Allowed',
    ],
    ['speed: 281 fps', 'speed: 900 ft/s', 'launch.speed', 'between 60 and 500 ft/s', 'No bow drawn by hand'],
    [
      'peep_height: 4.6 in',
      'peep_height: -1 in',
      'bow.peep_height',
      'between 1 and 10 in',
      'The eye is above the arrow',
    ],
    [
      'peep_to_pin: 33 in',
      'peep_to_pin: 33 ft',
      'sight.peep_to_pin',
      'between 10 and 60 in',
      'distance from the drawn string',
    ],
  ])('%s as %s', (was, is, path, allowed, reason) => {
    const [problem, ...more] = problemsOf(SMALLEST.replace(was, is));
    expect(more).toEqual([]);
    expect(problem).toMatchObject({ path });
    expect(problem?.allowed).toContain(allowed);
    expect(problem?.message).toContain(reason);
  });

  it('and guesses the unit that makes sense of the number', () => {
    expect(ordersOf(SMALLEST.replace('33 in', '33 ft'))).toEqual(['sight.peep_to_pin: Write "33 in"']);
    expect(ordersOf(`${SMALLEST}air: { temperature: 15 }`)).toEqual([
      'air.temperature: Write "15 degF" or "15 degC"',
    ]);
  });
});
