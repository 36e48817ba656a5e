import { describe, expect, it } from 'vitest';
import { readSetup } from '../../../src/setup/read.ts';
import { typedValues } from '../../../src/setup/typed-values.ts';
import { withValues } from '../../../src/setup/write.ts';
import { EXAMPLE, SMALLEST } from './example-text.ts';

/** The lines that an edit has changed or added. */
function changedLines(before: string, after: string): readonly string[] {
  const old = before.split('\n');
  return after.split('\n').filter((line) => !old.includes(line));
}

describe('withValues', () => {
  it('replaces a value where it stands: spaces, comments and order stay to the byte', () => {
    const edited = withValues(EXAMPLE, [
      { path: ['arrow', 'mass'], value: '460 gr' },
      { path: ['launch', 'speed'], value: '279.5 fps' },
      { path: ['marks', 1, 'reading'], value: 32.1 },
    ]);
    expect(edited).toBe(
      EXAMPLE.replace('mass: 452 gr       ', 'mass: 460 gr       ')
        .replace('speed: 281 fps', 'speed: 279.5 fps')
        .replace('reading: 31.9', 'reading: 32.1'),
    );
  });

  it('adds a line at the end of a section, in its column', () => {
    const edited = withValues(EXAMPLE, [{ path: ['bow', 'peep_height_sd'], value: '0.05 in' }]);
    expect(edited).toBe(EXAMPLE.replace('  hand: right\n', '  hand: right\n  peep_height_sd: 0.05 in\n'));
  });

  it.each([
    [['launch', 'note_sd'], 'launch: { speed: 281 fps, speed_sd: 1.5 fps, measured_at: 3 ft, note_sd: x }'],
    [['sight', 'lean'], '  lean: x'],
    [['arrow', 'parts', 'nock', 'length'], '    nock: { mass: 10 gr, length: x }'],
    [
      ['arrow', 'parts', 'point', 'blades', 'count'],
      '    point: { mass: 125 gr, shape: field, length: 1.3 in, blades: { count: x } }',
    ],
    [['latitude'], 'latitude: x'],
    [
      ['marks', 0, 'note'],
      '  - { range: 20 yd, reading: 12.4, arrows: 3, group: 1.5 in, lateral: 0 in, vertical: 0 in, note: x }',
    ],
  ])('puts a new value at %j', (path, line) => {
    expect(changedLines(EXAMPLE, withValues(EXAMPLE, [{ path, value: 'x' }]))).toEqual([line]);
  });

  it('makes the sections on the way', () => {
    const edited = withValues(SMALLEST, [{ path: ['air', 'temperature'], value: '59 degF' }]);
    expect(edited).toBe(`${SMALLEST}air:\n  temperature: 59 degF\n`);
  });

  it('fills a section and a key that have nothing after them', () => {
    const text = `${SMALLEST}air: # of the day\nwind:\n  speed: 5 mph\n  from:\n`;
    const edited = withValues(text, [
      { path: ['air', 'altitude'], value: '250 m' },
      { path: ['wind', 'from'], value: '90 deg' },
    ]);
    expect(edited).toBe(
      `${SMALLEST}air: # of the day\n  altitude: 250 m\nwind:\n  speed: 5 mph\n  from: 90 deg\n`,
    );
  });

  it('keeps a comment at the end of a section below the new line', () => {
    const text = 'bow:\n  peep_height: 4.6 in # eye\n  # end of bow\n\narrow:\n  mass: 5 g\n';
    expect(withValues(text, [{ path: ['bow', 'hand'], value: 'left' }])).toBe(
      'bow:\n  peep_height: 4.6 in # eye\n  hand: left\n  # end of bow\n\narrow:\n  mass: 5 g\n',
    );
  });

  it('keeps the ends of lines that the file has, and adds one that is missing', () => {
    const text = 'bow:\r\n  peep_height: 4.6 in\r\narrow:\r\n  mass: 5 g';
    expect(withValues(text, [{ path: ['bow', 'hand'], value: 'left' }])).toContain(
      'in\r\n  hand: left\r\narrow',
    );
    expect(withValues(text, [{ path: ['arrow', 'length'], value: '29 in' }])).toMatch(
      /5 g\r\n {2}length: 29 in\r\n$/,
    );
  });

  it.each(['a, b', 'low: wind', '# 7', '"', "it's", '{', '- x', 'true', '*', '  spaced '])(
    'quotes %j where it must, between braces and outside of them',
    (value) => {
      const edited = withValues(EXAMPLE, [
        { path: ['title'], value },
        { path: ['marks', 0, 'note'], value },
      ]);
      const setup = readSetup(edited, 'setup.yaml');
      expect([setup.title, setup.marks?.[0]?.note]).toEqual([value, value]);
    },
  );

  it.each([[['bow']], [['marks']], [['title', 'x']], [['marks', 9, 'range']]])(
    'throws for the path %j',
    (path) => {
      expect(() => withValues(EXAMPLE, [{ path, value: 'x' }])).toThrow(/cannot be set/);
    },
  );
});

describe('a value of any characters', () => {
  it.each(['a\nb', 'a\rb', 'x\u00a0', ' x ', 'a\u2028b', '', '"', '[]'])(
    '%j is read as it was typed',
    (value) => {
      for (const text of ['title: x\n', '\ufefftitle: x\n']) {
        const written = withValues(text, [{ path: ['marks', 'note'], value }]);
        expect(typedValues(written).get('marks.note')).toBe(value);
        expect(typedValues(written).get('title')).toBe('x');
      }
    },
  );
});
