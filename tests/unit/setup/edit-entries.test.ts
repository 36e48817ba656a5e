import { describe, expect, it } from 'vitest';
import { withEntry, without } from '../../../src/setup/edit-entries.ts';
import { isWellFormed, typedValues } from '../../../src/setup/typed-values.ts';

const BLOCK = `title: x   # a bow
marks:    # shot at camp
  - { range: 20 yd, reading: 8.2 }   # cold
  - range: 40 yd
    reading: 16.3

air: { temperature: 52 degF, humidity: 35 % }
`;
const ENTRY = { range: '60 yd', reading: 26.9, hits: [['0.4 in', '-1 in']] };
const TYPED = '{ range: 60 yd, reading: 26.9, hits: [ [ 0.4 in, -1 in ] ] }';

describe('an entry more', () => {
  it('stands after the last one of its list, indented like it', () =>
    expect(withEntry(BLOCK, 'marks', ENTRY)).toBe(
      BLOCK.replace('    reading: 16.3\n', `    reading: 16.3\n  - ${TYPED}\n`),
    ));
  it('begins a list at the end of the file', () =>
    expect(withEntry('title: x', 'marks', ENTRY)).toBe(`title: x\nmarks:\n  - ${TYPED}\n`));
  it('goes between the brackets of a list in one line', () =>
    expect(withEntry('marks: [{ range: 20 yd }] # c\n', 'marks', ENTRY)).toBe(
      `marks: [{ range: 20 yd }, ${TYPED}] # c\n`,
    ));
  it('fills an empty list and an empty key', () => {
    expect(withEntry('marks: []\n', 'marks', ENTRY)).toBe(`marks: [${TYPED}]\n`);
    expect(withEntry('marks: # none yet\nair: {}\n', 'marks', ENTRY)).toBe(
      `marks: # none yet\n  - ${TYPED}\nair: {}\n`,
    );
  });
  it('keeps the line ends of the file', () =>
    expect(withEntry('a: 1\r\nmarks:\r\n- { range: 20 yd }\r\n', 'marks', ENTRY)).toBe(
      `a: 1\r\nmarks:\r\n- { range: 20 yd }\r\n- ${TYPED}\r\n`,
    ));
});

describe('without what is taken away', () => {
  it('the other lines stay to the byte', () => {
    expect(without(BLOCK, ['marks', 0])).toBe(
      BLOCK.replace('  - { range: 20 yd, reading: 8.2 }   # cold\n', ''),
    );
    expect(without(BLOCK, ['marks', 1])).toBe(BLOCK.replace('  - range: 40 yd\n    reading: 16.3\n', ''));
    expect(without(BLOCK, ['marks', 1, 'reading'])).toBe(BLOCK.replace('    reading: 16.3\n', ''));
  });
  it('the first key behind a dash gives its place to the next', () =>
    expect(without(BLOCK, ['marks', 1, 'range'])).toBe(
      BLOCK.replace('  - range: 40 yd\n    reading: 16.3\n', '  - reading: 16.3\n'),
    ));
  it('between { } the comma goes too', () => {
    expect(without(BLOCK, ['air', 'temperature'])).toBe(BLOCK.replace('temperature: 52 degF, ', ''));
    expect(without(BLOCK, ['air', 'humidity'])).toBe(BLOCK.replace(', humidity: 35 %', ''));
  });
  it('a section or list with nothing else goes too', () => {
    expect(without('title: x\nair: { temperature: 52 degF }\n', ['air', 'temperature'])).toBe('title: x\n');
    expect(without('a: 1\nmarks:\n  - { range: 20 yd }\nb: 2\n', ['marks', 0])).toBe('a: 1\nb: 2\n');
  });
  it('nothing there, nothing changed', () => expect(without(BLOCK, ['bow', 'hand'])).toBe(BLOCK));
});

describe('what was typed', () => {
  it('is found by path as it stands in the text', () =>
    expect([...typedValues('a: 28.50\nb: { c: 1/2 in, d: }\nmarks: [{ range: "40 yd" }]\n')]).toEqual([
      ['a', '28.50'],
      ['b.c', '1/2 in'],
      ['b.d', ''],
      ['marks.0.range', '40 yd'],
    ]));
  it('is found as far as a text with mistakes can be read', () =>
    expect(typedValues('a: 1\nb: [2, \nc: 3').get('a')).toBe('1'));
});

it('an entry whose name spans lines stays on one', () => {
  for (const text of ['title: x\n', 'builds:\n  - { name: a }\n', 'builds: [{ name: a }]\n']) {
    const written = withEntry(text, 'builds', { name: 'b\n  c: d' });
    expect([...typedValues(written).values()]).toContain('b\n  c: d');
    expect(isWellFormed(written)).toBe(true);
  }
});
