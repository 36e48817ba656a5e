import { describe, expect, it } from 'vitest';
import { readSetup } from '../../../src/setup/read.ts';
import type { SetupFile } from '../../../src/setup/schema/schema.ts';
import { EXAMPLE } from './example-text.ts';
import { problemsOf } from './problems-of.ts';

const read = (text: string): SetupFile => readSetup(text, 'setup.yaml');
/** What the file says, without the record of how it was said. */
function said(text: string): Omit<SetupFile, 'readAs'> {
  const { readAs: _how, ...rest } = read(text);
  return rest;
}

describe('another name is read as the key that it stands for', () => {
  it.each([
    ['peak_draw_weight: 68 lbf', 'draw_weight: 68#'],
    ['peak_draw_weight: 68 lbf', 'Draw Weight: 68 lbs'],
    ['peak_draw_weight: 68 lbf', 'drawWeight: 68'],
    ['draw_length: 29 in', 'draw: 29"'],
    ['draw_length: 29 in', 'draw-length: 29 in'],
    ['brace_height: 6.5 in', 'brace: 6 1/2 in'],
    ['hand: right', 'hand: RH'],
    ['hand: right', 'hand: Right-handed'],
    ['hand: right', 'Hand: R'],
    ['  mass: 452 gr ', '  weight: 452 gr '],
    ['  mass: 452 gr ', '  grains: 452 '],
    ['  diameter: 0.246 in', '  OD: .246"'],
    ['mass_per_length: 9.5 gpi', 'gpi: 9.5'],
    ['deflection: 300', 'spine: 300'],
    ['inner_diameter: 0.166 in', 'id: 0.166 in'],
    ['insert: { mass: 20 gr,', 'insert: { weight: 20 gr,'],
    ['nock: { mass: 10 gr }', 'nock: 10 gr'],
    ['point: { mass: 125 gr, shape: field,', 'tip: { weight: 125 gr, type: Field Point,'],
    ['shape: field', 'shape: field point'],
    ['root_chord: 2.1 in', 'length: 2.1 in'],
    ['angle: 3 deg, turn: right', 'helical: 3 deg right'],
    ['angle: 3 deg, turn: right', 'helical: right 3°'],
    ['angle: 3 deg, turn: right', 'offset: 3 deg, turn: RH'],
    ['angle: 3 deg, turn: right', 'angle: 3 deg R'],
    ['angle: 3 deg, turn: right', 'angle: 3, turn: right helical'],
    ['vanes: { count', 'fletching: { count'],
    ['count: 3', 'count: three'],
    ['{ speed: 281 fps,', '{ velocity: 281 FPS,'],
    ['{ speed: 281 fps, speed_sd', '{ velocity: 281 fps, velocity_sd'],
    ['temperature: 59 degF', 'temp: 59 F'],
    ['altitude: 250 m', 'elevation: 250 m'],
    ['from: 90 deg', 'direction: from the right'],
    ['peep_to_pin: 33 in', 'sight_radius: 33 in'],
    ['zero_range: 20 yd', 'zero: 20 yd'],
    ['increases: down', 'increases: Down'],
    ['range: 60 yd, reading: 31.9', 'distance: 60 yd, setting: 31.9'],
    ['range: 60 yd, reading: 31.9', 'yards: 60, mark: 31,9'],
    ['marks:\n', 'shots:\n'],
    ['group: 5 in, lateral: -1 in', 'group_size: 5", left_right: 1" left'],
    ['title: Ridge', 'Title: Ridge'],
  ])('%s as %s', (was, is) => {
    const text = EXAMPLE.replace(was, is);
    expect(text).not.toBe(EXAMPLE);
    expect(said(text)).toEqual(said(EXAMPLE));
  });

  it('straight vanes do not turn the arrow', () => {
    const vanes = read(EXAMPLE.replace('angle: 3 deg, turn: right', 'helical: straight')).arrow.parts?.vanes;
    expect([vanes?.turn, vanes?.angle]).toEqual(['none', undefined]);
  });

  it('a part that stands under the arrow itself goes to its parts', () => {
    const text = EXAMPLE.replace('    nock: { mass: 10 gr }\n', '').replace(
      '  parts:',
      '  nock: 10 gr\n  parts:',
    );
    expect(said(text)).toEqual(said(EXAMPLE));
    const spine = EXAMPLE.replace(', deflection: 300', '').replace('  parts:', '  spine: 300\n  parts:');
    expect(said(spine)).toEqual(said(EXAMPLE));
  });

  it('a broadhead is a point with fixed blades', () => {
    const blades = 'blades: { count: 3, length: 1.1 in, cut: 1 1/8", thickness: 0.04 in }';
    const head = EXAMPLE.replace(/point: \{.*\}/, `broadhead: { weight: 100 gr, ${blades} }`);
    const point = EXAMPLE.replace(
      /point: \{.*\}/,
      'point: { mass: 100 gr, shape: fixed_blade, ' +
        'blades: { count: 3, length: 1.1 in, cutting_diameter: 1.125 in, thickness: 0.04 in } }',
    );
    expect(said(head)).toEqual(said(point));
  });

  it('an expandable is a mechanical head', () =>
    expect(read(EXAMPLE.replace('shape: field', 'shape: expandable')).arrow.parts?.point?.shape).toBe(
      'mechanical',
    ));

  it('on days of shooting and in places too', () => {
    const more =
      'days:\n  - { day: 2 June, air: { temp: 68 f }, shots: [{ distance: 40y, mark: 21, left_right: 1" left }] }\n' +
      'places:\n  - { name: camp, elevation: 9800 }\n';
    const { days, places, readAs } = read(EXAMPLE + more);
    const [day] = days ?? [];
    expect([day?.date, day?.marks?.[0]?.reading, places?.[0]?.name]).toEqual(['2 June', 21, 'camp']);
    // By hand: 68 degF is 293.15 K, an inch 0.0254 m.
    expect(day?.air?.temperature).toBeCloseTo(293.15, 9 /* K, rounding */);
    expect(day?.marks?.[0]?.lateral).toBeCloseTo(-0.0254, 12 /* m, rounding */);
    expect(places?.[0]?.altitude).toBeCloseTo(9800 * 0.3048, 9 /* m, rounding */);
    expect(readAs).toContainEqual({ path: 'days.0.shots.0.left_right', found: '1" left', readAs: '-1 in' });
  });

  it('in builds too', () => {
    const builds =
      'builds:\n  - { name: heavy, arrow: { weight: 480 gr, parts: { broadhead: { weight: 150 gr } } } }\n';
    const [build] = read(EXAMPLE + builds).builds ?? [];
    expect(build?.arrow?.parts?.point?.mass).toBeCloseTo(150 * 6.479891e-5, 12 /* decimals of a kilogram */);
  });
});

describe('a shape stands for the upper edge of a vane', () => {
  /** Area over length times height by each shape: Archimedes for the parabola, the rest as written beside the code. */
  it.each([
    ['parabolic', 2 / 3],
    ['shield', 1 / 2],
    ['low', 3 / 4],
    ['Low', 3 / 4],
  ])('%s: the trapezoid has %d of the box', (shape, share) => {
    const text = EXAMPLE.replace('root_chord: 2.1 in, tip_chord: 0.9 in', `length: 2.1 in, shape: ${shape}`);
    const vanes = read(text).arrow.parts?.vanes;
    if (vanes === undefined) throw new Error('no vanes');
    const area = (vanes.root_chord + vanes.tip_chord) / (2 * vanes.root_chord);
    expect(area).toBeCloseTo(share, 5 /* the edge is written to six digits */);
  });

  it('and is named as what it was taken for, at its own place', () => {
    const text = EXAMPLE.replace('root_chord: 2.1 in, tip_chord: 0.9 in', 'length: 2.1 in, shape: parabolic');
    expect(read(text).readAs).toEqual([
      { path: 'arrow.parts.vanes.length', found: 'length', readAs: 'arrow.parts.vanes.root_chord' },
      { path: 'arrow.parts.vanes.shape', found: 'parabolic', readAs: 'tip_chord: 0.7 in' },
    ]);
  });
});

it('a problem of a value stands where it was written, under the name of its key', () => {
  const [problem] = problemsOf(EXAMPLE.replace('deflection: 300', 'spine: 30'));
  expect([problem?.path, problem?.line, problem?.found]).toEqual(['arrow.parts.shaft.deflection', 14, '30']);
});

it('an override may use the archer’s name of a key', () => {
  const spine = (path: string) =>
    readSetup(EXAMPLE, 'setup.yaml', [{ path: path.split('.'), value: '400' }]).arrow.parts?.shaft
      ?.deflection;
  expect([spine('arrow.spine'), spine('arrow.parts.shaft.spine')]).toEqual([400, 400]);
});

it('a key that is in the wrong place on a command line is answered with its whole path', () =>
  expect(problemsOf(EXAMPLE, [{ path: ['point'], value: '100 gr' }]).map(({ write }) => write)).toEqual([
    'Write arrow.parts.point.mass',
  ]));
