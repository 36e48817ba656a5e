import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { stringify } from 'yaml';
import { SetupError } from '../../src/setup/problem.ts';
import { readSetup } from '../../src/setup/read.ts';
import { withValues } from '../../src/setup/write.ts';
import { EXAMPLE, SMALLEST } from '../unit/setup/example-text.ts';

const SEED = 20_240_607;

/** The text is read, or refused with problems that are complete; anything else is thrown on and fails the test. */
function readOrRefuse(text: string): void {
  try {
    readSetup(text, 'setup.yaml');
  } catch (error) {
    if (!(error instanceof SetupError)) throw error;
    expect(error.problems.length).toBeGreaterThan(0);
    for (const { line, column, allowed, write, message } of error.problems) {
      expect(Math.min(line, column)).toBeGreaterThanOrEqual(1);
      expect(line).toBeLessThanOrEqual(text.split('\n').length);
      expect(allowed.length * write.length).toBeGreaterThan(0);
      expect(message).not.toMatch(/undefined|\[object|NaN(?! in)/);
    }
  }
}

const KEYS = [
  'bow',
  'arrow',
  'launch',
  'sight',
  'marks',
  'parts',
  'scale',
  'speed',
  'mass',
  'range',
  'builds',
  'air',
  'drag_coefficient',
];
const keys = fc.oneof(fc.constantFrom(...KEYS, '__proto__', 'toString'), fc.string({ maxLength: 6 }));
const scalars = fc.oneof(
  fc.string({ maxLength: 12 }),
  fc.constantFrom('29 in', '452 gr', '281 fps', 'right', '50 %', '-1 in', '1e9 yd', 'unknown'),
  fc.double(),
  fc.integer(),
  fc.boolean(),
  fc.constant(null),
);
const { tree } = fc.letrec((tie) => ({
  tree: fc.oneof(
    { depthSize: 'small' },
    scalars,
    fc.array(tie('tree'), { maxLength: 4 }),
    fc.dictionary(keys, tie('tree'), { maxKeys: 6 }),
  ),
}));

describe('readSetup', () => {
  it('given any JSON returns a SetupFile or throws a SetupError, and nothing else', () => {
    fc.assert(
      fc.property(tree, (value) => readOrRefuse(JSON.stringify(value) ?? '')),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('given any data as indented text, the same', () => {
    fc.assert(
      fc.property(tree, (value) => readOrRefuse(stringify(value, { aliasDuplicateObjects: false }))),
      { seed: SEED, numRuns: 500 },
    );
  });

  const text = fc.oneof(
    fc.string({ unit: 'binary', maxLength: 60 }),
    fc
      .array(
        fc.constantFrom(
          'bow',
          ': ',
          ':',
          '\n',
          '  ',
          '\t',
          '- ',
          '{',
          '}',
          '[',
          ']',
          ', ',
          '"',
          "'",
          '&a',
          '*a',
          '!t',
          '#',
          '|',
          '>',
          '29 in',
          '?',
          '%',
          '---',
          '\r\n',
          '<<',
        ),
        { maxLength: 25 },
      )
      .map((parts) => parts.join('')),
  );
  it('given any text, the same', () => {
    fc.assert(fc.property(text, readOrRefuse), { seed: SEED, numRuns: 1500 });
  });

  it('given a good file with one piece cut out or put in, the same', () => {
    const edit = fc.tuple(fc.nat(EXAMPLE.length), fc.nat(12), text);
    fc.assert(
      fc.property(edit, ([at, cut, put]) =>
        readOrRefuse(EXAMPLE.slice(0, at) + put + EXAMPLE.slice(at + cut)),
      ),
      { seed: SEED, numRuns: 500 },
    );
  });

  it('does not mind in which order the sections stand', () => {
    const sections = SMALLEST.trim().split('\n');
    const expected = readSetup(SMALLEST, 'setup.yaml');
    fc.assert(
      fc.property(fc.shuffledSubarray(sections, { minLength: sections.length }), (lines) => {
        expect(readSetup(lines.join('\n'), 'setup.yaml')).toEqual(expected);
      }),
      { seed: SEED, numRuns: 30 },
    );
  });
});

it('a value that is written is the value that is read, and every other line stays', () => {
  const paths = [
    ['title'],
    ['marks', 0, 'note'],
    ['marks', 1, 'note'],
    ['arrow', 'parts', 'others', 0, 'name'],
  ];
  // control characters make a file that is no text, which the reader refuses as a whole
  const values = fc.string({ maxLength: 30 }).filter((value) => value.trim() !== '');
  fc.assert(
    fc.property(fc.constantFrom(...paths), values, (path, value) => {
      const edited = withValues(EXAMPLE, [{ path, value }]);
      const setup = readSetup(edited, 'setup.yaml');
      const found = [
        setup.title,
        setup.marks?.[0]?.note,
        setup.marks?.[1]?.note,
        setup.arrow.parts?.others?.[0]?.name,
      ];
      expect(found).toContain(value);
      const kept = new Set(edited.split('\n'));
      expect(EXAMPLE.split('\n').filter((line) => !kept.has(line)).length).toBe(1);
    }),
    { seed: SEED, numRuns: 200 },
  );
});
